//! What a class asks of an answer beside its value: it decides what waits, never what is right.

use super::{at_the_weights, right_lines};
use leverwright::draw::draw;
use leverwright::lesson::{ClassProfile, built_in};
use leverwright::problem::{Asking, FiguresAsked, UnitAsked};
use leverwright::session::{Course, Session, Sign};
use leverwright::text::Words;
use leverwright::units::to_figures;

/// Mast, seed 3: the weight of the mast is 617.4 N.
fn asked(unit: UnitAsked, figures: FiguresAsked) -> Session {
    let mut session = at_the_weights("mast", 3);
    session.ask_of_answers(Asking { unit, figures });
    session
}

fn in_figures(figures: u8, rule: FiguresAsked) -> Session {
    let class = ClassProfile {
        figures: Some(figures),
        ..ClassProfile::default()
    };
    let lesson = built_in().into_iter().find(|one| one.id() == "counter");
    let lesson = class.lesson(lesson.unwrap());
    let opened = |seed| {
        let problem = draw(&lesson, seed, "en").unwrap().problem;
        Session::start(problem, None, Words::english()).unwrap()
    };
    // A pull that two figures tell coarsely.
    let coarse = |session: &Session| {
        let pull = pull(session);
        (to_figures(pull, 2) / pull - 1.0).abs() > 0.015
    };
    let mut session = (1..).map(opened).find(coarse).unwrap();
    session.ask_of_answers(Asking {
        figures: rule,
        ..Asking::default()
    });
    session.submit("skip");
    session.submit("hinge");
    session
}

#[test]
fn a_missing_unit_is_told_asked_or_marked() {
    for (unit, line, sign, said) in [
        (UnitAsked::Told, "617", Sign::Right, "Its unit is N."),
        (UnitAsked::Marked, "617", Sign::Right, "Its unit is N."),
        (
            UnitAsked::Asked,
            "617",
            Sign::Incomplete,
            "write it with its unit: N",
        ),
        (UnitAsked::Asked, "617 N", Sign::Right, ""),
        (
            UnitAsked::Asked,
            "Wb = 63*9.8 = 617",
            Sign::Incomplete,
            "its unit: N",
        ),
        // A form is worked out here, and its value has its unit.
        (UnitAsked::Asked, "63*9.8", Sign::Right, ""),
        // What does not hold is told so, unit or none.
        (UnitAsked::Asked, "63", Sign::Wrong, ""),
        (UnitAsked::Asked, "516", Sign::Wrong, ""),
    ] {
        let mut session = asked(unit, FiguresAsked::Asked);
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, sign, "{line}: {}", turn.line.message);
        let message = turn.line.message.to_string();
        assert!(message.contains(said), "{line}: {message}");
    }
}

#[test]
fn what_waits_for_its_unit_may_get_it_or_be_gone_on_with() {
    let mut session = asked(UnitAsked::Asked, FiguresAsked::Asked);
    assert!(!session.submit("617").moved_on);
    assert!(session.submit("617 N").moved_on);
    let mut session = asked(UnitAsked::Asked, FiguresAsked::Asked);
    session.submit("617");
    assert!(session.submit("go on").moved_on);
}

#[test]
fn marked_units_stand_among_the_slips_at_the_end() {
    let mut session = asked(UnitAsked::Marked, FiguresAsked::Asked);
    session.submit("617");
    let lines = right_lines(&session);
    for (_, line) in lines.iter().skip(1) {
        session.submit(line);
    }
    assert_eq!(session.course(), Course::Finished);
    let summary: Vec<String> = session
        .view()
        .summary
        .iter()
        .map(ToString::to_string)
        .collect();
    let told = summary.join("\n");
    assert!(told.contains("a value without its unit"), "{told}");
}

/// The pull of the first counter, with every figure.
fn pull(session: &Session) -> f64 {
    use leverwright::key::{Pins, Sampling};
    let sampling = Sampling::of(session.problem());
    let key = session.key();
    key.value(key.unknown().unwrap(), sampling.own(), &Pins::new())
        .unwrap()
}

#[test]
fn how_many_figures_a_last_value_needs_is_the_classes() {
    use FiguresAsked::{Asked, Exact, Told, Usual};
    let text = leverwright::units::figures_text;
    for (figures, rule, typed, sign) in [
        (3, Usual, 2, Sign::Incomplete),
        (3, Usual, 5, Sign::Right),
        (4, Usual, 3, Sign::Right),
        (3, Asked, 2, Sign::Incomplete),
        (3, Exact, 2, Sign::Incomplete),
        (3, Asked, 3, Sign::Right),
        (3, Asked, 5, Sign::Right),
        (3, Told, 2, Sign::Rounded),
        (3, Exact, 3, Sign::Right),
        (3, Exact, 5, Sign::Incomplete),
        (2, Asked, 2, Sign::Rounded),
        (2, Asked, 3, Sign::Right),
        (2, Exact, 3, Sign::Incomplete),
        (4, Asked, 3, Sign::Incomplete),
        (4, Asked, 4, Sign::Right),
        (4, Told, 3, Sign::Right),
    ] {
        let mut session = in_figures(figures, rule);
        let line = format!("T = {} kN", text(pull(&session) / 1000.0, typed));
        let turn = session.submit(&line);
        let told = format!("{figures} {rule:?} {line}: {}", turn.line.message);
        assert_eq!(turn.line.sign, sign, "{told}");
    }
}

/// Whatever is asked of figures, a number that rounding does not explain does not hold.
#[test]
fn a_wrong_number_holds_in_no_class() {
    for figures in [2, 3, 4] {
        for rule in [
            FiguresAsked::Told,
            FiguresAsked::Asked,
            FiguresAsked::Exact,
            FiguresAsked::Usual,
        ] {
            for share in [0.9, 1.06, 1.2] {
                let mut session = in_figures(figures, rule);
                let line = format!("T = {:.1} N", pull(&session) * share);
                let turn = session.submit(&line);
                assert_eq!(turn.line.sign, Sign::Wrong, "{figures} {rule:?} {line}");
            }
        }
    }
}
