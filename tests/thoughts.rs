//! The thoughts behind wrong lines: the rewrites against a pencil, second mistakes, what is asked
//! next, and what a learner's own mistakes add.

// The bench uses more of these pupils than the tests do.
#[allow(dead_code)]
#[path = "../benches/thoughts/case.rs"]
mod case;
#[allow(dead_code)]
#[path = "../benches/thoughts/manner.rs"]
mod manner;
#[path = "../benches/thoughts/paper.rs"]
mod paper;
#[allow(dead_code)]
#[path = "../benches/thoughts/pupil.rs"]
mod pupil;

mod one_line;
mod quotients;

use case::{Case, is_family};
use leverwright::diagnosis::{Leaning, Voice, diagnose, diagnose_of, probe};
use leverwright::judge::{Board, Names, Standing, judge};
use leverwright::key::StepId;
use leverwright::lesson::built_in;
use leverwright::lesson::{ProblemFile, parse_problem_file};
use leverwright::mistakes::{typed_line, value};
use leverwright::session::{Session, Sign};
use leverwright::text::Words;
use leverwright::units::figures_text;
use pupil::{Wrong, first_apart, work};

fn cases(draws: u64) -> Vec<Case> {
    built_in()
        .iter()
        .flat_map(|lesson| (1..=draws).filter_map(|seed| Case::draw(lesson, seed)))
        .collect()
}

/// The pupils' arithmetic knows nothing of keys and rewrites: `benches/thoughts/pupil.rs`.
#[test]
fn val_the_rewrites_give_what_a_pupil_gets_with_a_pencil() {
    let mut compared = 0;
    for case in cases(4) {
        for made in case.made() {
            // Twelve figures carried on are as good as all.
            let lines = work(&case.paper, &[made.wrong], 12).unwrap();
            for line in lines.iter().filter(|line| line.value.is_some()) {
                if line.step != case.pull() && line.step != made.shows_at {
                    continue;
                }
                let own = line.value.unwrap();
                let near = |found: f64| (found.abs() - own.abs()).abs() < 1e-6 * own.abs().max(1.0);
                let degrees = matches!(line.step, StepId::Reaction(_, part) if part == leverwright::key::Part::Direction);
                let of = |instance: &leverwright::mistakes::Instance| {
                    let found = value(&instance.key, &case.key, line.step, &case.sampling);
                    found.map(|found| if degrees { found.to_degrees() } else { found })
                };
                let mut same = case
                    .instances
                    .iter()
                    .filter(|one| one.mistake.id == made.wrong.id());
                let found = same.any(|instance| of(instance).is_some_and(near));
                // The calculator is in radians for some values only, in others for all.
                assert!(
                    found || made.wrong == Wrong::Radians,
                    "{:?} at {:?}: {own}, {}",
                    made.wrong,
                    line.step,
                    case.problem.statement()
                );
                compared += usize::from(found);
            }
        }
    }
    assert!(compared > 400, "{compared}");
}

#[test]
fn verif_a_second_mistake_is_named_beside_the_first() {
    let (mut found, mut all) = (0, 0);
    for case in cases(4) {
        for second in [
            Wrong::OwnAtTip,
            Wrong::OwnLeftOut,
            Wrong::TermLeftOut(1),
            Wrong::Turned(1),
        ] {
            let firsts = [Wrong::AllMasses, Wrong::SineCosine(pupil::Whose::Rope)];
            for first in firsts {
                let both = [first, second];
                let (Some(right), Some(alone), Some(lines)) = (
                    work(&case.paper, &[], 5),
                    work(&case.paper, &[first], 5),
                    work(&case.paper, &both, 5),
                ) else {
                    continue;
                };
                let (Some(one), Some(two)) =
                    (first_apart(&right, &alone), first_apart(&alone, &lines))
                else {
                    continue;
                };
                if one == two {
                    continue;
                }
                let typed: Vec<String> = lines
                    .iter()
                    .map(|line| match line.value {
                        Some(_) => {
                            format!("{} = {}", case.paper.name(line.step).unwrap(), line.form)
                        }
                        None if line.form.contains('=') => line.form.clone(),
                        None => format!("{} = {}", case.paper.name(line.step).unwrap(), line.form),
                    })
                    .collect();
                let ranked = case.session.thoughts_in(&typed);
                let at = lines.iter().position(|line| line.step == two).unwrap();
                let named = ranked[at].thoughts.iter().take(2);
                all += 1;
                found += usize::from(named.into_iter().any(|one| is_family(one, second.id())));
            }
        }
    }
    assert!(all > 40, "{all}");
    assert!(found * 100 >= all * 95, "{found} of {all}");
}

#[test]
fn verif_right_workings_are_accused_of_nothing() {
    let mut lines = 0;
    for case in cases(6) {
        for figures in [3, 4, 5] {
            let typed: Vec<String> = work(&case.paper, &[], figures)
                .unwrap()
                .iter()
                .map(|line| match line.value {
                    Some(value) => format!(
                        "{} = {} = {}",
                        case.paper.name(line.step).unwrap(),
                        line.form,
                        figures_text(value, figures)
                    ),
                    None => line.form.clone(),
                })
                .collect();
            for (line, ranked) in typed.iter().zip(case.session.thoughts_in(&typed)) {
                lines += 1;
                assert_ne!(
                    ranked.sign,
                    Sign::Wrong,
                    "`{line}` {}",
                    case.problem.statement()
                );
                assert!(ranked.thoughts.is_empty(), "`{line}` {:?}", ranked.thoughts);
            }
        }
    }
    assert!(lines > 300, "{lines}");
}

/// Looks at bare numbers at the pull that the mistakes of a problem give.
fn numbers_at_the_pull(mut seen: impl FnMut(&Case, &Board<'_>, &leverwright::judge::Judgement)) {
    for case in cases(12) {
        let (names, standing) = (Names::of(&case.problem, &case.key, &[]), Standing::new());
        for instance in &case.instances {
            let Some(pull) = value(&instance.key, &case.key, case.pull(), &case.sampling) else {
                continue;
            };
            let board = Board::of(
                (&case.problem, &case.key, &case.sampling),
                (&names, &standing),
            );
            let judgement = judge(&board, case.pull(), &figures_text(pull, 3), 1);
            seen(&case, &board, &judgement);
        }
    }
}

/// What is met too seldom for a prior has a name all the same, never flatly.
#[test]
fn verif_a_bare_value_names_a_thought_without_a_prior_where_nothing_likelier_has_it() {
    let (mut first, mut all) = (0, 0);
    for case in cases(3) {
        for made in case
            .instances
            .iter()
            .filter(|made| made.mistake.prior == 0.0)
        {
            let line = typed_line(&case.problem, &case.key, made, &case.sampling);
            let Some((number, step)) = line.and_then(|line| line.number) else {
                continue;
            };
            let ranked = case.session.thoughts_behind(step, &number);
            let named = ranked.thoughts.first();
            assert!(named.is_none_or(|named| !named.flat), "{ranked:?}");
            all += 1;
            first += usize::from(named.is_some_and(|named| is_family(named, made.mistake.id)));
        }
    }
    assert!(all >= 20 && 5 * first >= 4 * all, "{first} of {all}");
}

#[test]
fn verif_a_value_is_asked_for_only_where_it_tells_thoughts_with_other_hints_apart() {
    let (mut asked, mut several) = (0, 0);
    numbers_at_the_pull(|case, board, judgement| {
        let diagnosis = diagnose(board, judgement, &case.instances);
        let family = |index: usize| case.instances[index].mistake.family;
        let mut families: Vec<&str> = diagnosis
            .named
            .iter()
            .map(|named| family(named.instance))
            .collect();
        families.dedup();
        several += usize::from(families.len() > 1);
        let Some(found) = probe(board, judgement.target, &case.instances, &diagnosis) else {
            return;
        };
        asked += 1;
        assert!(families.len() > 1);
        assert_eq!(diagnosis.named[0].voice, Voice::Perhaps);
        assert!(case.key.rank(found.step) < case.key.rank(judgement.target));
        assert_eq!(found.values.len(), diagnosis.named.len());
        let first = found.values[0];
        let apart = |value: &f64| (value - first).abs() > 0.009 * value.abs().max(first.abs());
        assert!(found.values.iter().any(apart), "{found:?}");
    });
    assert!(several > 10 && asked > 5, "{asked} of {several}");
}

#[test]
fn verif_a_confirmed_mistake_is_thought_of_sooner() {
    let (mut risen, mut first) = (0, 0);
    numbers_at_the_pull(|case, board, judgement| {
        let before = diagnose(board, judgement, &case.instances);
        let [_, second, ..] = before.named.as_slice() else {
            return;
        };
        if second.share < 0.1 || before.named[0].voice == Voice::Flat {
            return;
        }
        let id = case.instances[second.instance].mistake.id;
        let mut leaning = Leaning::default();
        (0..3).for_each(|_| leaning.confirm(id));
        let after = diagnose_of(board, judgement, &case.instances, &leaning);
        let now = after
            .named
            .iter()
            .find(|named| case.instances[named.instance].mistake.id == id);
        assert!(now.unwrap().share > second.share);
        risen += 1;
        first += usize::from(case.instances[after.named[0].instance].mistake.id == id);
    });
    assert!(risen > 10 && first > 0, "{first} of {risen}");
}

/// A number that two thoughts give: the earlier value is asked for, once, and its answer decides.
#[test]
fn a_session_asks_once_for_the_value_that_tells_two_thoughts_apart() {
    let mut answered = 0;
    numbers_at_the_pull(|case, board, judgement| {
        if answered >= 5 {
            return;
        }
        let diagnosis = diagnose(board, judgement, &case.instances);
        let Some(found) = probe(board, judgement.target, &case.instances, &diagnosis) else {
            return;
        };
        if diagnosis.named[1].share < 0.2 {
            return;
        }
        let number = judgement.evidence.number.unwrap().value;
        let mut session = case.session.clone();
        // As far as the pull nothing was told.
        for _ in 0..30 {
            if session.view().question.to_string().contains("tension") {
                break;
            }
            session.submit("skip");
        }
        let symbol = case.key.step(found.step).unwrap().symbol.typed();
        let asks = |text: &str| text.contains("Two thoughts would give this number");
        let said = session
            .submit(&format!("T = {}", figures_text(number, 3)))
            .line;
        if !asks(&said.message.to_string()) {
            return;
        }
        assert!(
            said.message.to_string().contains(&symbol),
            "{}",
            said.message
        );
        let right = value(&case.key, &case.key, found.step, &case.sampling).unwrap();
        session.submit(&format!("{symbol} = {} N", figures_text(right, 4)));
        let again = session
            .submit(&format!("T = {}", figures_text(1.01 * number, 3)))
            .line;
        assert!(!asks(&again.message.to_string()), "{}", again.message);
        answered += 1;
    });
    assert!(answered > 0, "{answered}");
}

/// By hand from the print: a ladder with μ = 0.35, 20 kg and a climber of 70 kg (tests/boards/ladder.json),
/// a square of 0.60 m without a quarter of 0.30 m (centre.json), and a wheel whose edge pushes with
/// 392 N level and 294 N upright (wheel_at_step.json).
#[test]
fn val_a_form_in_a_general_working_shows_its_thought() {
    let rows = [
        ("ladder", "FN", "0.35*686", "friction-from-weight"),
        ("ladder", "FN", "882/0.35", "coefficient-inverted"),
        ("ladder", "Wb", "20/9.8", "divided-by-g"),
        ("ladder", "Wbperp", "196/sin(28)", "hypotenuse-confused"),
        ("internal_hinge", "dQ", "dQ = L2", "spread-load-at-its-end"),
        ("centre", "ΣA", "0.36 + 0.09", "hole-added"),
        ("centre", "x̄", "(0.30 + 0.45)/2", "plain-average"),
        ("wheel_at_step", "E", "392 + 294", "components-added"),
        (
            "wheel_at_step",
            "ψE",
            "atan(392/294)",
            "arctangent-inverted",
        ),
    ];
    let mut faults = Vec::new();
    for (board, step, line, id) in rows {
        let path = format!("{}/tests/boards/{board}.json", env!("CARGO_MANIFEST_DIR"));
        let text = std::fs::read_to_string(path).unwrap();
        let Ok(ProblemFile::General(system)) = parse_problem_file(&text) else {
            panic!("{board} is no general problem");
        };
        let session = Session::start_general(&system, Words::english()).unwrap();
        let Some(at) = session.step_called(step) else {
            panic!("{board} has no {step}: {:?}", session.steps_to_call());
        };
        let ranked = session.thoughts_behind(at, line);
        let first = ranked.thoughts.first();
        if first.map(|first| (first.id.as_str(), first.flat)) != Some((id, true)) {
            faults.push(format!(
                "{board} {step} `{line}`: {} {:?}",
                ranked.truth, ranked.thoughts
            ));
        }
    }
    assert_eq!(faults, Vec::<String>::new());
}
