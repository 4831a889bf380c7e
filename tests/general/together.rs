//! Balances that give their unknowns together, what acts between two bodies, and a hinge at its
//! limit, beside a learner.

use super::ends::passed_to;
use leverwright::session::{Session, Sign};

/// By hand: about the joint and about the left pin N = 276 N and m = 21.7 kg, so the friction of
/// the floor on the right bar is 0.55·276 N = 152 N to the left, and the joint holds it to the right.
const BARS: &str = include_str!("../workings/two_bars.json");
const FRAME: &str = include_str!("../boards/a_frame.json");
/// By hand: Ax = −150 N, so Ay = ±200 N, and about the roller 196 N·0.5 m + 490 N·(3.5 m − d) =
/// Ay·3.5 m: d = 2.271 m or 5.129 m.
const PIN: &str = include_str!("../boards/hinge_gives.json");

fn question(session: &Session) -> String {
    session.view().question.to_string()
}

/// What is shown after an order.
fn shown(session: &mut Session, order: &str) -> String {
    session.submit(order).line.hints[0].to_string()
}

/// The hint of this rung.
fn hint(session: &mut Session, rung: usize) -> String {
    let hints = (0..rung).map(|_| shown(session, "hint"));
    hints.last().unwrap_or_default()
}

/// A line typed into a sitting gets this sign.
fn judged_so(mut session: Session, line: &str, sign: Sign) {
    let turn = session.submit(line);
    assert_eq!(turn.line.sign, sign, "{line}: {}", turn.line.message);
}

#[test]
fn each_of_several_balances_tells_what_it_leaves_out() {
    for (title, without) in [
        ("moments about the joint", "Without moment there: Jx, Jy."),
        (
            "moments about the left pin",
            "Without moment there: Ax, Ay.",
        ),
    ] {
        let mut session = passed_to(BARS, title);
        let asked = question(&session);
        assert!(asked.contains(without), "{asked}");
        assert!(asked.contains("2 balances give N, m together"), "{asked}");
        let told = hint(&mut session, 2);
        assert!(told.contains("taken together give N, m"), "{told}");
        assert!(!told.contains("gives the rest"), "{told}");
    }
    let told = hint(&mut passed_to(FRAME, "moments about the left foot"), 2);
    assert!(told.contains("so what is known gives the rest"), "{told}");
}

#[test]
fn a_hint_for_one_of_several_unknowns_is_of_all_their_balances() {
    let first = "push of the right floor";
    for (title, rung, wanted) in [
        (first, 1, "The balances before hold N, m together."),
        (first, 2, "Put what one balance says"),
        (first, 3, "until N stands alone"),
        ("value that is sought", 1, "The rest of N, m is found."),
        (
            "level part of the force of the left pin",
            1,
            "In the balance before",
        ),
    ] {
        let told = hint(&mut passed_to(BARS, title), rung);
        assert!(told.contains(wanted), "{title}, {rung}: {told}");
    }
}

#[test]
fn what_acts_between_two_bodies_is_told_with_the_body() {
    let level = "level part of the force of the joint";
    let told = shown(&mut passed_to(BARS, level), "show");
    let wanted = "Jx = −FN = −152 N (to the left on the left bar)";
    assert!(told.contains(wanted), "{told}");
    let turned = passed_to(BARS, level)
        .submit("152 N")
        .line
        .message
        .to_string();
    assert!(
        turned.contains("Jx points to the left on the left bar"),
        "{turned}"
    );
    // Of a pin to the ground there is but one way.
    let pin = "level part of the force of the left pin";
    let told = shown(&mut passed_to(BARS, pin), "show");
    assert!(
        told.contains("Ax = −Jx = −(−152 N) = 152 N (to the right)"),
        "{told}"
    );
    for (line, sign) in [
        ("Jx = −152 N (to the left on the left bar)", Sign::Right),
        ("152 N to the right on the right bar", Sign::Right),
        ("152 N to the left on the right bar", Sign::Wrong),
        ("152 N to the right on the left bar", Sign::Wrong),
    ] {
        judged_so(passed_to(BARS, level), line, sign);
    }
}

#[test]
fn a_hinge_at_its_limit_is_worked_by_its_parts() {
    let part = "upright part of the force of the pin";
    let asked = question(&passed_to(PIN, part));
    assert!(asked.contains("A is at its limit. What is Ay"), "{asked}");
    let told = hint(&mut passed_to(PIN, part), 3);
    assert!(told.contains("Ay = √(Amax² − Ax²)"), "{told}");
    for (line, sign) in [
        ("Ay = √(Amax² − Ax²)", Sign::Right),
        ("sqrt(250^2 - 150^2)", Sign::Right),
        ("Ay = 200 N", Sign::Right),
        ("Ay = 200 N up", Sign::Right),
        ("Ay = 200 N down", Sign::Right),
        ("Ay = -200 N", Sign::Right),
        ("A = 250 N", Sign::Right),
        ("Ax^2 + Ay^2 = Amax^2", Sign::Noted),
        ("Ay = 250 N", Sign::Wrong),
        ("Ay = Amax", Sign::Wrong),
        ("Ay = 250 - 150", Sign::Wrong),
        ("Ay = sqrt(250^2 + 150^2)", Sign::Wrong),
        ("Ay = Amax - Ax", Sign::Wrong),
    ] {
        judged_so(passed_to(PIN, part), line, sign);
    }
}

/// The sign as typed chooses which value of what is sought is meant.
#[test]
fn the_sign_of_the_part_at_the_limit_goes_with_its_value() {
    let part = "upright part of the force of the pin";
    for (told, right, other) in [
        ("Ay = 200 N", "d = 2.271 m", "d = 5.129 m"),
        ("Ay = -200 N", "d = 5.129 m", "d = 2.271 m"),
    ] {
        let mut session = passed_to(PIN, part);
        let turn = session.submit(told);
        assert_eq!(turn.line.sign, Sign::Right, "{told}");
        let said = turn.line.message.to_string();
        assert!(!said.contains("points"), "{said}");
        assert_eq!(
            session.submit(other).line.sign,
            Sign::Noted,
            "{told}, {other}"
        );
        assert_eq!(
            session.submit(right).line.sign,
            Sign::Right,
            "{told}, {right}"
        );
    }
}

/// What stands beside an angle cannot go under the line: it stands in a sine or a cosine.
#[test]
fn a_hint_for_an_angle_is_of_its_sine_and_cosine() {
    let ladder = include_str!("../boards/ladder_angle.json");
    let slope = include_str!("../boards/incline_slip.json");
    for (board, rung, wanted) in [
        (ladder, 1, "which terms hold θ, and in which ratio"),
        (ladder, 2, "dividing by the cosine leaves a tangent"),
        (ladder, 3, "a tangent of θ stands alone"),
        (slope, 1, "is found. Which balance before holds θ"),
        (slope, 2, "dividing by the cosine leaves a tangent"),
        (slope, 3, "a tangent of θ stands alone"),
    ] {
        let told = hint(&mut passed_to(board, "value that is sought"), rung);
        assert!(told.contains(wanted), "{rung}: {told}");
    }
}
