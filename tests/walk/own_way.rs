//! The diagram draws what the learner has established, right or not, and nothing ahead of it.

use leverwright::draw::parse_code;
use leverwright::key::{Axis, Part, Pins, Sampling, StepId};
use leverwright::lesson::{built_in, parse_problem};
use leverwright::problem::ForceId;
use leverwright::session::{Progress, Session, Sign};
use leverwright::sketch::ForceMark;
use leverwright::text::Words;

/// By hand: Hx = −348.9 N, Hy = 954.5 N (see tests/lines.rs).
const MAST: &str = include_str!("../lines/mast.json");
const HINGE: ForceId = ForceId::Support(0);

/// The mast at its first question.
fn mast() -> Session {
    Session::start(parse_problem(MAST).unwrap(), None, Words::english()).unwrap()
}

/// The mast at a step, all before it passed over.
fn at(asked: StepId) -> Session {
    let mut session = mast();
    let before = session.key().asked().position(|step| step.id == asked);
    for _ in 0..before.unwrap() {
        session.submit("skip");
    }
    session
}

/// The mast at the first part of the hinge's force.
fn at_the_hinge() -> Session {
    at(StepId::Reaction(HINGE, Part::Along(Axis::Horizontal)))
}

/// The way in which the hinge's force is drawn, in degrees; `None` while it is open.
fn drawn(session: &Session) -> Option<f64> {
    let marks = session.view().marks;
    let mark = marks.forces.iter().find(|mark| mark.force == HINGE);
    mark.unwrap().direction.map(f64::to_degrees)
}

fn result(session: &Session, symbol: &str) -> Option<String> {
    let results = session
        .view()
        .steps
        .into_iter()
        .filter_map(|step| step.result);
    let begins = format!("{symbol} = ");
    results
        .into_iter()
        .find(|result| result.starts_with(&begins))
}

#[test]
fn the_hinge_is_drawn_when_both_of_its_parts_stand() {
    let mut session = at_the_hinge();
    assert_eq!(drawn(&session), None);
    assert_eq!(session.submit("-349").line.sign, Sign::Right);
    assert_eq!(drawn(&session), None);
    assert_eq!(session.submit("954").line.sign, Sign::Right);
    let way = drawn(&session).unwrap();
    assert!((way - 110.1).abs() < 0.1, "{way}");
    session.submit("back");
    assert_eq!(drawn(&session), None);
    session.submit("skip");
    assert!(drawn(&session).is_some(), "a part passed over is right");
}

#[test]
fn a_part_gone_on_with_is_drawn_as_the_learner_has_it() {
    for (line, level) in [
        ("349 N to the right", 349.0),
        ("120", 120.0),
        ("-120", -120.0),
        ("2*T*cos 25", 698.0),
    ] {
        let mut session = at_the_hinge();
        assert_eq!(session.submit(line).line.sign, Sign::Wrong, "{line}");
        let turn = session.submit("go on");
        assert!(turn.moved_on, "{line}: {}", turn.line.message);
        let told = result(&session, "Hx").unwrap().replace('−', "-");
        assert!(told.contains(&format!("= {level} N")), "{line}: {told}");
        session.submit("skip");
        let way = drawn(&session).unwrap();
        let wanted = f64::atan2(954.5, level).to_degrees();
        assert!((way - wanted).abs() < 1.0, "{line}: {way} for {wanted}");
    }
}

/// By hand, with a pull of her own of 950 N: 950 N·cos 25° = 861 N, and 1117.2 N − 950 N·sin 25° =
/// 715.7 N; √(861² + 715.7²) N = 1120 N, and atan(715.7/861) = 39.7°.
#[test]
fn verif_her_own_value_stays_hers_where_the_way_told_with_it_is_wrong() {
    let own_pull = || {
        let problem = parse_problem(MAST).unwrap();
        let mut session = Session::start(problem, None, Words::english()).unwrap();
        while !session
            .view()
            .question
            .to_string()
            .contains("how large is T,")
        {
            session.submit("skip");
        }
        session.submit("950 N");
        session.submit("go on");
        session
    };
    let shown = |session: &Session, symbol: &str| result(session, symbol).unwrap();
    for line in [
        "861 N right",
        "+861 N right",
        "T cos 25 right",
        "861.0 N to the right",
    ] {
        for on in ["go on", "I think I am right"] {
            let mut session = own_pull();
            let turn = session.submit(line);
            let told = turn.line.message.to_string();
            assert!(told.contains("size holds"), "{line}: {told}");
            session.submit(on);
            let level = shown(&session, "Hx");
            assert!(level.contains("= 861"), "{line}, {on}: {level}");
            for follows in ["715.7", "1120", "39.7"] {
                let turn = session.submit(follows);
                let told = turn.line.message.to_string();
                assert_eq!(turn.kept.truth, "follows", "{line} {follows}: {told}");
            }
        }
    }
    let mut session = own_pull();
    for line in ["861 N right", "go on", "715.7 N down", "go on"] {
        session.submit(line);
    }
    let upright = shown(&session, "Hy").replace('−', "-");
    assert!(
        upright.contains("= -716 N") || upright.contains("= -715.7 N"),
        "{upright}"
    );
    assert_eq!(session.submit("1500").line.sign, Sign::Wrong);
    assert_eq!(session.submit("1120").kept.truth, "follows");
}

/// Either sense of a part may be counted as positive: the arrow is the true one all the same.
#[test]
fn a_part_in_the_other_sense_is_drawn_as_it_is() {
    let mut session = at_the_hinge();
    assert_eq!(session.submit("349").line.sign, Sign::Right);
    session.submit("954");
    assert!((drawn(&session).unwrap() - 110.1).abs() < 0.1);
}

/// A line without a value gives nothing to go on with; in dispute it lets the learner pass, and
/// the right value is not told as theirs.
#[test]
fn a_line_without_a_value_tells_none() {
    let line = "T + 3.1 m";
    let mut session = at_the_hinge();
    assert_eq!(session.submit(line).line.sign, Sign::Wrong);
    assert!(!session.submit("go on").moved_on);
    assert!(session.submit("I think I am right").moved_on);
    assert_eq!(result(&session, "Hx"), None);
    session.submit("skip");
    assert_eq!(drawn(&session), None);
    session.submit("back");
    session.submit("back");
    session.submit("skip");
    assert!(result(&session, "Hx").is_some());
}

/// Going on with a wrong line never shows the right value of what was asked.
#[test]
fn verif_going_on_never_shows_the_right_value() {
    for line in [
        "123 N", "7 + 8 kg", "T = 12 m", "3*4", "W1 = 71", "sin 30", "0 = 1",
    ] {
        let problem = parse_problem(MAST).unwrap();
        let mut session = Session::start(problem, None, Words::english()).unwrap();
        let (key, sampling) = (session.key().clone(), Sampling::of(session.problem()));
        for _ in key.asked() {
            let Some(at) = session
                .view()
                .steps
                .iter()
                .position(|step| step.progress == Progress::Now)
            else {
                break;
            };
            let step = key.asked().nth(at).unwrap();
            let sign = session.submit(line).line.sign;
            session.submit("go on");
            let value = key.value(step.id, sampling.own(), &Pins::new());
            if let (Some(value), Sign::Wrong) = (value, sign)
                && let Some(result) = &session.view().steps[at].result
                && session.view().steps[at].progress == Progress::Done
            {
                let told = leverwright::units::value_text(value, step.dimension, 3);
                assert!(
                    !result.ends_with(&told),
                    "{line} at {:?}: {result}",
                    step.id
                );
            }
            if session.view().steps[at].progress == Progress::Now {
                session.submit("skip");
            }
        }
    }
}

/// A direction told with the line that it is measured from: by hand 69.9° with the horizontal.
#[test]
fn a_direction_may_say_what_it_is_measured_from() {
    for (line, wanted) in [
        ("69.9° from the horizontal", Sign::Right),
        ("69.9 to horizontal", Sign::Right),
        ("atan(954.5/348.9) with the horizontal", Sign::Right),
        ("20.1° from the vertical", Sign::Noted),
        ("atan(348.9/954.5) to the vertical", Sign::Noted),
        ("69.9° from the vertical", Sign::Wrong),
        ("20.1 from the horizontal", Sign::Wrong),
    ] {
        let mut session = at_the_hinge();
        for _ in 0..3 {
            session.submit("skip");
        }
        let turn = session.submit(line);
        let told = turn.line.message.to_string();
        assert_eq!(turn.line.sign, wanted, "{line}: {told}");
        let sent_on = told.contains("Asked is the one with the horizontal");
        assert_eq!(sent_on, wanted == Sign::Noted, "{line}: {told}");
    }
}

/// A wrong multiple of the unknown is carried as it is: by hand, with T⊥ = T sin 20° the pull is
/// 385.0 · sin 80° / sin 20° = 1109 N.
#[test]
fn a_multiple_of_the_unknown_gone_on_with_gives_its_own_pull() {
    let problem = parse_problem(MAST).unwrap();
    let mut session = Session::start(problem, None, Words::english()).unwrap();
    while !session.view().question.to_string().contains("T⊥") {
        session.submit("skip");
    }
    assert_eq!(session.submit("T sin 20").line.sign, Sign::Wrong);
    let turn = session.submit("go on");
    assert!(turn.moved_on, "{}", turn.line.message);
    let turn = session.submit("236.1*3.1 + 404.7*4 = T*sin 20*6.2");
    assert_eq!(turn.line.sign, Sign::Follows, "{}", turn.line.message);
    let turn = session.submit("1109 N");
    assert_eq!(turn.line.sign, Sign::Follows, "{}", turn.line.message);
    // By hand: 1109 · sin 20° = 379 N.
    assert_eq!(result(&session, "T⊥").as_deref(), Some("T⊥ = 379 N"));
}

/// Two weights make 114 kg·9.8 m/s² = 1117 N, which is true and leaves the rope out of `Hy`.
#[test]
fn verif_a_true_sum_that_is_no_answer_is_not_said_to_be_false() {
    for (line, verdict) in [
        ("Wb + W1 = 1117", "true, but does not answer"),
        ("412 + 706 = 1118", "true, but does not answer"),
        ("Wb + W1 = 1017", "does not hold"),
        ("Wb + W1", "does not hold"),
        ("1117 N", "does not hold"),
    ] {
        let mut session = at_the_hinge();
        session.submit("skip");
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, Sign::Wrong, "{line}");
        assert_eq!(turn.line.verdict, verdict, "{line}");
    }
}

/// The mast at 55° with a level rope, so that the right α = 35° and γ = 55°, Wb = 382.2 N,
/// W1 = 558.6 N, L = 6.0 m, dT = 4.1 m.
const LEVEL_ROPE: &str = "mast-0015CHJ-RQGEB";

/// The walkway with Wb = 294 N, W1 = 862.4 N and γ = 50°; by hand from 1390 N for T:
/// Hx = 893.5 N, Hy = 1156.4 N − 1064.8 N = 91.6 N, ψ = 5.85°.
const STEEP_ROPE: &str = "walkway-05JWR8-EEXX3";

/// The mast at θ = 20° with the vertical and a level rope at dT = 3.1 m: L = 6.4 m, masses of 36 kg and
/// 63 kg, so that α = θ and γ = 70°; by hand Wb = 352.8 N, W1 = 617.4 N.
const UPRIGHT_ANGLE: &str = "mast-00446KV-RQGR8";

/// The mast with two loads and a level rope at its tip.
const TWO_LOADS: &str = "mast-74ZA65P-RQG01";

/// A mast of 6 m at α = 50°, its rope at dT = 3.3 m.
const ONE_NUMBER: &str = "mast-6XFMAM5-RQGPA";

/// Walkways to the left, the rope at 70° and at 55° with the body; by hand, with γ = 25° and 20° in
/// the first: T = 1467 N and 1812 N, Hx = −1329 N and −1703 N; with γ = 45° in the second:
/// T = 1069 N, Hx = −756 N.
const TO_THE_LEFT: &str = "walkway-0ASYGV-EEX1C";
const TO_THE_LEFT_AT_55: &str = "walkway-0AZAS9-EEXKN";

/// Walkways to the right, the rope at 65° with the horizontal and at 55° with the vertical; by hand,
/// with γ = 25° in the first: T = 1101 N, Hx = 998.3 N, and 1102 N·cos 25° = 998.8 N; with γ = 55° in
/// the second: T = 1026 N, and 1027 N·cos 55° = 589.1 N. Rightly T = 1465.3 N in the second, beside a
/// moment of 1466.1 N·m, and Hx = 1200 N.
const TO_THE_RIGHT_AT_65: &str = "walkway-005S3F-EEX4V";
const TO_THE_RIGHT_AT_35: &str = "walkway-07JHZE-EEXHY";

/// The problem by its code, how many steps are passed over, lines, and the truth of the last one
/// with a stretch of what is said.
type Row = (
    &'static str,
    usize,
    &'static [&'static str],
    &'static str,
    &'static str,
);

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // A wrong γ with the number of the right α: the name is hers, the number is α.
    (LEVEL_ROPE, 5, &["35", "go on", "Wb cos γ"], "follows", "line 1"), (LEVEL_ROPE, 5, &["35", "go on", "Wb sin α"], "holds", ""),
    (LEVEL_ROPE, 5, &["35", "go on", "Wb cos 35"], "wrong", "35° is α here, and your own γ too"), (LEVEL_ROPE, 5, &["35", "go on", "Wb cos 35"], "wrong", "You took cos α"),
    (LEVEL_ROPE, 5, &["35", "go on", "313"], "wrong", "Perhaps sine and cosine exchanged"), (LEVEL_ROPE, 5, &["35", "go on", "Wb sin 35"], "holds", ""),
    (LEVEL_ROPE, 5, &["35", "go on", "skip", "skip", "T sin 35"], "follows", "line 1"),
    (LEVEL_ROPE, 5, &["35", "go on", "skip", "skip", "skip", "Wb cos γ*3 + W1 cos γ*6 = T sin γ*4.1"], "follows", "line 1"),
    (LEVEL_ROPE, 5, &["35", "go on", "skip", "skip", "skip", "Wb cos γ*3 + W1*6 = T sin γ*4.1"], "wrong", ""),
    (LEVEL_ROPE, 5, &["35", "go on", "skip", "skip", "skip", "219*3 + 320*6 = T sin 35*4.1"], "follows", "line 1"),
    (LEVEL_ROPE, 5, &["35", "go on", "skip", "skip", "skip", "skip", "(Wb cos 35*3+W1 cos 35*6)/(4.1 sin 35)"], "wrong", "if you mean γ, write its name"),
    (LEVEL_ROPE, 5, &["35", "go on", "skip", "skip", "skip", "skip", "(Wb cos γ*3+W1 cos γ*6)/(4.1 sin γ)"], "follows", "line 1"),
    // T is the level part of the hinge's force too; a right form with a wrong number behind it is T.
    (LEVEL_ROPE, 10, &["(382.2*3*sin 35+558.6*6*sin 35)/(4.1*sin 55) = 900"], "wrong", "the number after the equals sign is not its value"), (LEVEL_ROPE, 10, &["(219.2*3+320.4*6)/(4.1*sin 55) = -631"], "wrong", "radians"),
    // A component that was put again counts, though another one stood between.
    (STEEP_ROPE, 4, &["25", "go on", "T sin 25", "Tperp = (Wb*L/2 + W1*d1)/dT", "back", "T sin 25", "294*1.5 + 862*2.3 = 2.7 T sin(25)"], "follows", ""),
    // Her own γ and the right α are one number, each where it belongs.
    (ONE_NUMBER, 4, &["50", "50", "go on", "Wb sin 50", "W1 sin 50", "T sin 50", "Wb sin 50*3+W1 sin 50*6 = T sin 50*3.3"], "follows", "line 2"), (ONE_NUMBER, 4, &["50", "50", "go on", "Wb sin 50", "W1 sin 50", "T sin 50", "Wb sin 50*3+W1 cos 50*6 = T sin 50*3.3"], "wrong", ""),
    // Cosines throughout: the rope's own ratio stands under the line, and nobody divided a weight.
    (LEVEL_ROPE, 10, &["(382.2*3+558.6*6)*cos 35/(4.1*cos 55)"], "wrong", "You took cos α"), (LEVEL_ROPE, 10, &["(382.2*3/sin 35+558.6*6/sin 35)/(4.1*sin 55)"], "wrong", "divided by the ratio"),
    // With α + γ = 90° a wrong ratio of the rope gives what nothing resolved gives: what stands in the line tells.
    (LEVEL_ROPE, 10, &["(Wb*L/2+W1*L)/dT"], "wrong", "used the whole of Wb"), (LEVEL_ROPE, 10, &["(Wb/2+W1)*L/dT"], "wrong", "used the whole of Wb"), (LEVEL_ROPE, 10, &["T*dT = Wb*L/2+W1*L"], "wrong", "used the whole of Wb"), (LEVEL_ROPE, 10, &["(382.2*6.0/2+558.6*6.0)/4.1"], "wrong", "used the whole of Wb"),
    (LEVEL_ROPE, 10, &["(Wb*L/2*cos alpha+W1*L*cos alpha)/(dT*sin gamma)"], "wrong", "You took cos α for Wb"), (LEVEL_ROPE, 10, &["(Wb*L/2*cos theta+W1*L*cos theta)/(dT*sin gamma)"], "holds", ""), (LEVEL_ROPE, 10, &["(Wb*L/2*sin alpha+W1*L*sin alpha)/(dT*cos gamma)"], "wrong", "You took cos γ for T"), (LEVEL_ROPE, 10, &["(Wb*L/2*sin alpha+W1*L*sin alpha)/(dT*sin gamma)"], "holds", ""),
    (UPRIGHT_ANGLE, 10, &["(Wb*L/2*cos theta+W1*L*cos theta)/(dT*cos theta)"], "wrong", "You took cos α for Wb"), (UPRIGHT_ANGLE, 10, &["(Wb*L/2*sin theta+W1*L*sin theta)/(dT*cos theta)"], "holds", ""),
    // Whole forces and distances show no tangent.
    (TWO_LOADS, 10, &["(Wb*L/2+W1*d1+W2*d2)/L"], "wrong", "not the part of T across the mast yet"), (TWO_LOADS, 12, &["(Wb*L/2+W1*d1+W2*d2)/L"], "wrong", "used the whole of Wb"),
    // Masses among forces: the first weight is spoken of, never the hinge's force.
    (UPRIGHT_ANGLE, 12, &["36+63"], "wrong", "You put a mass into the balance of forces, where Wb is"), (UPRIGHT_ANGLE, 12, &["36+617"], "wrong", "You put a mass into the balance of forces, where Wb is"), (UPRIGHT_ANGLE, 12, &["353+63"], "wrong", "You put a mass into the balance of forces, where W1 is"), (UPRIGHT_ANGLE, 12, &["99"], "wrong", "Perhaps a mass in the balance of forces (Wb)"),
    (UPRIGHT_ANGLE, 12, &["36*9.8+63*9.8"], "holds", ""),
    (STEEP_ROPE, 9, &["30+88-T sin 50"], "wrong", "You put a mass into the balance of forces, where Wb is"), (STEEP_ROPE, 9, &["294+88-T sin 50"], "wrong", "where W1 is"), (STEEP_ROPE, 9, &["31+88-T sin 50"], "wrong", "Perhaps a mass in the balance of forces (Wb)"),
    (STEEP_ROPE, 9, &["Hy + T sin 50 = 30+88"], "wrong", "where Wb is"),
    (LEVEL_ROPE, 5, &["36", "go on", "Wb cos 36"], "follows", "line 1"), (LEVEL_ROPE, 5, &["36", "go on", "Wb sin 36"], "wrong", ""),
    // What she has put since takes the place of her first value.
    (STEEP_ROPE, 7, &["1390", "go on", "T = 1172", "1390 cos 50"], "wrong", "follow from T = 1390 N of line 1. Since line 2, T = 1172 N counts"),
    (STEEP_ROPE, 7, &["1390", "go on", "T = 1172", "893.5"], "wrong", "of line 1"), (STEEP_ROPE, 7, &["1390", "go on", "T = 1172", "1390 sin 50"], "wrong", ""),
    (STEEP_ROPE, 7, &["1390", "go on", "T = 1172", "1172 cos 50"], "holds", ""), (STEEP_ROPE, 7, &["1390", "go on", "T = 1172", "T cos 50"], "holds", ""),
    (STEEP_ROPE, 7, &["1390", "go on", "T = 1430", "go on", "1390 cos 50"], "wrong", "Since line 2, T = 1430 N counts"),
    (STEEP_ROPE, 7, &["1390", "go on", "T = 1430", "go on", "1430 cos 50"], "follows", "line 2"),
    // Her own numbers give it to the figure, whatever rounding a difference would bear.
    (STEEP_ROPE, 7, &["1390", "go on", "1390 cos 50", "1156.4 - 1390 sin 50", "skip", "atan(91.6/893)"], "follows", ""),
    (STEEP_ROPE, 7, &["1390", "go on", "893.5", "91.6", "skip", "5.85"], "follows", ""), (STEEP_ROPE, 7, &["1390", "go on", "893.5", "91.6", "skip", "7.5"], "wrong", ""),
    (STEEP_ROPE, 8, &["770", "go on", "258.2", "skip", "18.5"], "follows", "line 1"),
    // Her own γ moves the rope, however its angle is given, and the hinge's part points as the right
    // one; a value is compared with what her pull gives as she typed it.
    (TO_THE_LEFT, 4, &["20", "go on", "skip", "skip", "T=1813 N", "Hx=T cos 20"], "follows", "points to the left"),
    (TO_THE_LEFT, 4, &["20", "go on", "skip", "skip", "T=1813 N", "1704 N"], "follows", "points to the left"),
    (TO_THE_LEFT, 4, &["20", "go on", "skip", "skip", "T=1813 N", "T cos γ"], "follows", "points to the left"),
    (TO_THE_LEFT, 4, &["20", "go on", "skip", "skip", "T=1813 N", "T cos 20 to the right"], "wrong", "not the way"),
    (TO_THE_LEFT, 4, &["25", "go on", "skip", "skip", "T=1467 N", "1330 N"], "follows", "lines 1, 2"),
    (TO_THE_LEFT, 4, &["25", "go on", "skip", "skip", "T=1467 N", "Hx=1329.7 N"], "follows", "lines 1, 2"),
    (TO_THE_LEFT, 4, &["25", "go on", "skip", "skip", "T=1467 N", "-1330 N"], "follows", "lines 1, 2"),
    (TO_THE_LEFT, 4, &["25", "go on", "skip", "skip", "T=1467 N", "1467 cos 25"], "follows", "lines 1, 2"),
    (TO_THE_LEFT, 4, &["25", "go on", "skip", "skip", "T=1467 N", "1350 N"], "wrong", ""),
    (TO_THE_LEFT, 4, &["25", "go on", "skip", "skip", "T=1467 N", "614 N"], "wrong", ""),
    (TO_THE_LEFT, 4, &["25", "go on", "skip", "skip", "T=1467 N", "1467 sin 25"], "wrong", ""),
    (TO_THE_LEFT, 4, &["25", "go on", "skip", "skip", "T=1467 N", "1487 cos 25"], "wrong", ""),
    (TO_THE_LEFT_AT_55, 4, &["45", "go on", "skip", "skip", "T=1069.4 N", "756 N"], "follows", "points to the left"),
    (TO_THE_LEFT_AT_55, 4, &["45", "go on", "skip", "skip", "T=1069.4 N", "780 N"], "wrong", ""),
    (TO_THE_LEFT_AT_55, 4, &["35", "go on", "skip", "skip", "T=1318 N", "T cos 35"], "follows", "points to the left"),
    (TO_THE_RIGHT_AT_65, 4, &["25", "go on", "skip", "skip", "T=1102 N", "998.8 N"], "follows", "points to the right"),
    (TO_THE_RIGHT_AT_65, 4, &["25", "go on", "skip", "skip", "T=1105 N", "1001.5 N"], "follows", "points to the right"),
    (TO_THE_RIGHT_AT_65, 4, &["25", "go on", "skip", "skip", "T=1102 N", "1010 N"], "wrong", ""),
    (TO_THE_RIGHT_AT_35, 4, &["55", "go on", "skip", "skip", "T=1027 N", "589.1 N"], "follows", ""),
    (TO_THE_RIGHT_AT_35, 4, &["55", "go on", "skip", "skip", "T=1027 N", "600 N"], "wrong", ""),
    // A pull that was never typed as a number may be worked with as three figures give it.
    (TO_THE_RIGHT_AT_35, 7, &["(36*9.8*1.8+88*9.8*1.7)/(2.5*sin 35)", "Hx=1464 cos 35"], "holds", ""),
    (TO_THE_RIGHT_AT_35, 7, &["(36*9.8*1.8+88*9.8*1.7)/(2.5*sin 35)", "1464*0.819"], "holds", ""),
    (TO_THE_RIGHT_AT_35, 7, &["(36*9.8*1.8+88*9.8*1.7)/(2.5*sin 35)", "1450 cos 35"], "wrong", ""),
    (TO_THE_RIGHT_AT_35, 7, &["(36*9.8*1.8+88*9.8*1.7)/(2.5*sin 35)", "1480 cos 35"], "wrong", ""),
    (TO_THE_RIGHT_AT_35, 7, &["(36*9.8*1.8+88*9.8*1.7)/(2.5*sin 35)", "1464 sin 35"], "wrong", ""),
    (TO_THE_RIGHT_AT_35, 7, &["(36*9.8*1.8+88*9.8*1.7)/(2.5*sin 35)", "1464*0.5736"], "wrong", ""),
    (TO_THE_RIGHT_AT_35, 7, &["T=1465 N", "1464 cos 35"], "noted", "not to be seen"),
];

/// By hand, with T = 1813 N at 20°: Hx = −1704 N and Hy = 1039 N − 620 N = 419 N.
#[test]
fn a_part_that_follows_from_her_own_angle_is_drawn_to_the_right_ones_side() {
    for level in ["Hx=T cos 20", "1704 N", "-T cos 20"] {
        let lessons = built_in();
        let (index, place) = parse_code(TO_THE_LEFT, &lessons).unwrap();
        let problem = lessons[index].problem_at(&place, "en").unwrap();
        let mut session = Session::start(problem, None, Words::english()).unwrap();
        for _ in 0..4 {
            session.submit("skip");
        }
        let lines = ["20", "go on", "skip", "skip", "T=1813 N", level, "419 N up"];
        for line in lines {
            session.submit(line);
        }
        let way = drawn(&session).unwrap();
        let wanted = f64::atan2(419.0, -1704.0).to_degrees();
        assert!((way - wanted).abs() < 1.0, "{level}: {way} for {wanted}");
    }
}

#[test]
fn verif_what_follows_from_her_own_values_is_told_so() {
    let mut faults = Vec::new();
    for (code, passed, lines, truth, said) in ROWS {
        let lessons = built_in();
        let (index, place) = parse_code(code, &lessons).unwrap();
        let problem = lessons[index].problem_at(&place, "en").unwrap();
        let mut session = Session::start(problem, None, Words::english()).unwrap();
        for _ in 0..*passed {
            session.submit("skip");
        }
        let turns: Vec<_> = lines.iter().map(|line| session.submit(line)).collect();
        let last = turns.last().unwrap();
        let message = last.line.message.to_string();
        if last.kept.truth != *truth || !message.contains(said) {
            let found = &last.kept.truth;
            faults.push(format!("{code} {lines:?}: {found}: {message}"));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// The parts of the mast's hinge in the other sense: by hand ψ = atan(954.5/348.9) = 69.9°, up and
/// to the left, 110.1° from the positive x axis.
const TO_THE_RIGHT: &[&str] = &["349 N to the right", "go on", "954.5 N up", "skip"];
const TO_THE_RIGHT_AND_DOWN: &[&str] = &[
    "349 N to the right",
    "go on",
    "954.5 N down",
    "go on",
    "skip",
];

/// Her way counts, and the right one; nothing between the two.
#[test]
fn verif_a_direction_is_right_as_it_is_and_follows_from_her_own_senses() {
    for (before, line, truth, said) in [
        (
            TO_THE_RIGHT,
            "69.9 above the horizontal, to the left",
            "holds",
            "",
        ),
        (
            TO_THE_RIGHT,
            "69.9 above the horizontal, to the right",
            "follows",
            "line 1",
        ),
        (TO_THE_RIGHT, "69.9", "holds", ""),
        (TO_THE_RIGHT, "110.1", "holds", ""),
        (TO_THE_RIGHT, "180 - 69.9", "holds", ""),
        (TO_THE_RIGHT, "atan(954.5/348.9) to the left", "holds", ""),
        (
            TO_THE_RIGHT,
            "atan(954.5/348.9) to the right",
            "follows",
            "line 1",
        ),
        (TO_THE_RIGHT, "69.9 from the negative x axis", "holds", ""),
        (
            TO_THE_RIGHT,
            "69.9 from the positive x axis",
            "follows",
            "line 1",
        ),
        (TO_THE_RIGHT, "110.1 from the positive x axis", "holds", ""),
        (
            TO_THE_RIGHT,
            "110.1 from the negative x axis",
            "follows",
            "line 1",
        ),
        (
            TO_THE_RIGHT,
            "69.9 below the horizontal, to the right",
            "wrong",
            "another way",
        ),
        (
            TO_THE_RIGHT,
            "69.9 below the horizontal, to the left",
            "wrong",
            "another way",
        ),
        (TO_THE_RIGHT, "249.9", "wrong", "another way"),
        (TO_THE_RIGHT, "290.1", "wrong", "another way"),
        (TO_THE_RIGHT, "71.5 to the left", "wrong", ""),
        (
            TO_THE_RIGHT_AND_DOWN,
            "69.9 above the horizontal, to the left",
            "holds",
            "",
        ),
        (TO_THE_RIGHT_AND_DOWN, "110.1", "holds", ""),
        (
            TO_THE_RIGHT_AND_DOWN,
            "69.9 below the horizontal, to the right",
            "follows",
            "lines 1, 2",
        ),
        (TO_THE_RIGHT_AND_DOWN, "290.1", "follows", "lines 1, 2"),
        (
            TO_THE_RIGHT_AND_DOWN,
            "69.9 above the horizontal, to the right",
            "wrong",
            "another way",
        ),
        (
            TO_THE_RIGHT_AND_DOWN,
            "69.9 below the horizontal, to the left",
            "wrong",
            "another way",
        ),
        (TO_THE_RIGHT_AND_DOWN, "249.9", "wrong", "another way"),
        (
            &["skip", "skip", "skip"],
            "110.1 from the negative x axis",
            "wrong",
            "From which line",
        ),
        (
            &["skip", "skip", "skip"],
            "110.1 from the positive x axis",
            "holds",
            "",
        ),
    ] {
        let mut session = at_the_hinge();
        for line in before {
            session.submit(line);
        }
        let turn = session.submit(line);
        let told = turn.line.message.to_string();
        assert_eq!(turn.kept.truth, truth, "{before:?} {line}: {told}");
        assert!(told.contains(said), "{before:?} {line}: {told}");
    }
}

/// By hand: T·sin 80°·6.2 m = 2351 N m, so that T⊥ = 379 N, and T = 385 N.
#[test]
fn verif_once_the_balance_stands_a_value_of_its_part_may_be_told() {
    for (asked, line, truth) in [
        ("how large is T, the tension", "T⊥ = 379.1 N", "holds"),
        ("how large is T, the tension", "Tp = 379", "holds"),
        ("how large is T, the tension", "T⊥ = 395 N", "noted"),
        ("how large is T, the tension", "379.1", "wrong"),
        ("Write the balance of moments", "T⊥ = 379.1 N", "noted"),
        ("What is T⊥", "T⊥ = 379.1 N", "noted"),
    ] {
        let mut session = mast();
        while !session.view().question.to_string().contains(asked) {
            session.submit("skip");
        }
        let turn = session.submit(line);
        let told = turn.line.message.to_string();
        assert_eq!(turn.kept.truth, truth, "{asked} {line}: {told}");
        assert_eq!(told.contains("as a letter"), truth == "noted", "{told}");
    }
}

/// What the second hint at a part of the hinge's force says, after a line.
fn place_of(problem: &str, asked: &str, line: Option<&str>) -> String {
    let mut session =
        Session::start(parse_problem(problem).unwrap(), None, Words::english()).unwrap();
    while !session.view().question.to_string().contains(asked) {
        session.submit("skip");
    }
    if let Some(line) = line {
        assert_eq!(session.submit(line).line.sign, Sign::Wrong, "{line}");
    }
    session.submit("hint");
    let lines = session.submit("hint");
    assert_eq!(lines.kept.hint, Some(2));
    lines.line.hints.last().unwrap().to_string()
}

#[test]
fn masses_among_forces_are_hinted_at_by_the_first_weight() {
    let place = place_of(MAST, "upright part", Some("42+72-T sin 25"));
    assert!(place.contains("arrow of Wb"), "{place}");
}

#[test]
fn the_hint_at_a_part_of_the_hinges_force_speaks_of_the_ropes_own_triangle() {
    let pulls = |way: &str| {
        let mut problem: serde_json::Value = serde_json::from_str(MAST).unwrap();
        problem["model"]["ropes"][0]["direction"] = way.into();
        let known = problem["text"]["meanings"].as_object_mut();
        known.map(|meanings| meanings.remove("β"));
        problem.to_string()
    };
    let (level, upright) = (pulls("right"), pulls("up"));
    for (problem, asked, line, wanted) in [
        (
            MAST,
            "Hx",
            Some("T sin 25"),
            "with a level and an upright side",
        ),
        (
            MAST,
            "Hx",
            Some("385 sin 25"),
            "with a level and an upright side",
        ),
        (
            MAST,
            "Hy",
            Some("Wb + W1 - T cos 25"),
            "with a level and an upright side",
        ),
        (MAST, "Hx", None, "right triangle of the rope's pull"),
        (&level, "Hx", None, "The rope pulls level: its whole pull"),
        (&level, "Hy", None, "The rope pulls level: none of its pull"),
        (
            &upright,
            "its force H",
            None,
            "The rope pulls upright: its whole pull",
        ),
        (MAST, "T⊥", Some("T cos 80"), "component across the mast"),
    ] {
        let told = place_of(problem, asked, line);
        assert!(told.contains(wanted), "{asked} {line:?}: {told}");
        let across = asked == "T⊥";
        assert_eq!(told.contains("across the mast"), across, "{asked}: {told}");
    }
}

/// A name of her own is told with the value that it keeps, whatever is asked.
#[test]
fn a_name_of_her_own_is_read_with_what_it_keeps() {
    let mut session = mast();
    let angle = |step: &&leverwright::key::Step| matches!(step.id, StepId::Angle(_));
    let before = session.key().asked().position(|step| angle(&step));
    for _ in 0..before.unwrap() {
        session.submit("skip");
    }
    let line = session.submit("a1 = 4 sin 55").line;
    let reading = line.reading.unwrap();
    assert!(reading.ends_with("= 3.28"), "{reading}");
}

/// With her own T, by hand: T⊥ = T·sin 80° and Tx = T·cos 25°.
#[test]
fn what_is_made_of_her_own_pull_follows_it() {
    let mut session = mast();
    let pull = StepId::Pull(ForceId::Rope(0));
    let before = session.key().asked().position(|step| step.id == pull);
    for _ in 0..before.unwrap() {
        session.submit("skip");
    }
    session.submit("500 N");
    assert!(session.submit("go on").moved_on);
    let names = session.view().names;
    let part = names.iter().find(|name| name.shown == "T⊥").unwrap();
    assert_eq!(part.value.as_deref(), Some("492 N"));
    let shown = session.submit("show").line.hints[0].to_string();
    assert!(shown.contains("453 N (to the left)"), "{shown}");
    assert!(shown.contains("your own"), "{shown}");
    // 411.6 N + 705.6 N − 500 N·sin 25° is 905.9 N.
    assert!(
        session.submit("show").line.hints[0]
            .to_string()
            .contains("906 N")
    );
}

/// An angle of hers stands in every line that is shown behind it, whatever was shown of T across the
/// mast before.
#[test]
fn her_own_angle_stands_in_the_balance_that_is_shown() {
    let mut session = at(StepId::Angle(ForceId::Rope(0)));
    session.submit("31 deg");
    assert!(session.submit("go on").moved_on);
    let mut shown = Vec::new();
    for _ in 0..8 {
        shown.extend(session.submit("show").line.hints);
    }
    let shown: Vec<String> = shown.iter().map(ToString::to_string).collect();
    let of_pull = |line: &&String| line.contains("sin 31.0°");
    // T across the mast, the moment sum and T itself.
    assert_eq!(shown.iter().filter(of_pull).count(), 3, "{shown:#?}");
}

/// By hand: with T = 450 N, Hx = −407.8 N and Hy = 926.8 N. A size without a way is judged by what
/// follows from her pull, and the line shown for the direction points so too.
#[test]
fn the_line_shown_for_a_direction_of_her_own_points_as_her_sizes_were_judged() {
    let mut session = mast();
    let pull = StepId::Pull(ForceId::Rope(0));
    let before = session.key().asked().position(|step| step.id == pull);
    for _ in 0..before.unwrap() {
        session.submit("skip");
    }
    for line in [
        "T = 450 N",
        "go on",
        "Hx = 408 N",
        "Hy = 927 N",
        "H = 1013 N",
    ] {
        session.submit(line);
    }
    let told = format!("{:?}", session.submit("show"));
    assert!(told.contains("above the horizontal, to the left"), "{told}");
}

/// A pull of her own that comes out below zero is drawn where the rope is, and says so.
#[test]
fn a_negative_pull_of_her_own_is_drawn_with_its_sign() {
    let label = |line: &str| {
        let mut session = mast();
        let pull = StepId::Pull(ForceId::Rope(0));
        let before = session.key().asked().position(|step| step.id == pull);
        for _ in 0..before.unwrap() {
            session.submit("skip");
        }
        session.submit(line);
        session.submit("go on");
        let marks = session.view().marks;
        let rope = |mark: &&ForceMark| mark.force == ForceId::Rope(0);
        marks.forces.iter().find(rope).unwrap().label.clone()
    };
    assert_eq!(label("T = -450 N"), "T = −450 N");
    assert_eq!(label("T = 450 N"), "T = 450 N");
}
