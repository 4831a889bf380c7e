//! What is sought with more than one true value, and values that solve the equations only.

use super::ends::{of_file, passed_to};
use leverwright::session::{Session, Sign, Turn};

/// By hand: sin β = 588·2/(600·3), so β = 40.8° or 139.2°; Tx = ±454 N, Hx the reverse of it.
const ANGLE: &str = include_str!("stay_at_an_angle.json");
/// By hand: 1176 = 400·d/√((3 − d)² + 1), so d = 2.94 m or 3.84 m.
const TIED: &str = include_str!("stay_tied.json");

fn turns(session: &mut Session, lines: &[(&str, Sign)]) -> Vec<Turn> {
    let mut given = Vec::new();
    for (line, sign) in lines {
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, *sign, "{line}: {}", turn.line.message);
        given.push(turn);
    }
    given
}

#[test]
fn either_value_of_what_is_sought_is_right_and_is_worked_on_with() {
    use Sign::{Noted, Right, Wrong};
    let mut session = passed_to(ANGLE, "value that is sought");
    let first = turns(
        &mut session,
        &[
            ("β = 120°", Wrong),
            ("β = 139.2°", Right),
            ("Tx = -454 N", Right),
            ("Hx = 454 N left", Noted),
            ("Hx = 454 N right", Right),
            ("H = 495 N", Right),
            ("β = 40.8°", Noted),
        ],
    );
    let also = first[1].line.message.to_string();
    assert!(also.contains("There is another value of β"), "{also}");
    let mut session = passed_to(ANGLE, "value that is sought");
    turns(
        &mut session,
        &[
            ("β = 180° - 40.8°", Right),
            ("back", Sign::Talk),
            ("β = 40.8°", Right),
            ("Hx = 454 N right", Noted),
            ("Hx = 454 N left", Right),
            ("β = 120°", Wrong),
        ],
    );
    for (line, sign) in [
        ("d = 2.94 m", Right),
        ("d = 3.84 m", Right),
        ("3.84 m", Right),
        ("d = 3.4 m", Wrong),
        ("d = 2.94 m or 3.84 m", Right),
        ("d = 3.84 m and d = 2.94 m", Right),
    ] {
        let mut session = passed_to(TIED, "value that is sought");
        turns(&mut session, &[(line, sign)]);
    }
    for line in ["d = 2.94 m or 3.4 m", "d = 3.84 m or 3.84 m"] {
        let turn = passed_to(TIED, "value that is sought").submit(line);
        assert!(
            !matches!(turn.line.sign, Right | Noted),
            "{line}: {}",
            turn.line.message
        );
    }
}

/// A force that is found before what is sought belongs to one of its values.
#[test]
fn a_force_told_first_fixes_which_value_is_meant() {
    let mut session = of_file(ANGLE);
    turns(
        &mut session,
        &[
            ("Hx = 454 N to the right", Sign::Right),
            ("β = 40.8°", Sign::Noted),
            ("β = 139.2°", Sign::Right),
        ],
    );
}

/// By hand, with friction up the wall: N = 48.0/(cos 33° + 0.15 sin 33°) = 52.2 N, and about the peg
/// 74.0·(1.2 − d) = (52.2 sin 33° − 0.15·52.2 cos 33°)·d, so d = 0.926 m.
#[test]
fn a_balance_of_the_other_value_turns_the_working_to_it() {
    let pole = include_str!("pole_on_peg.json");
    let mut session = passed_to(pole, "balance of the forces along the pole");
    let given = turns(
        &mut session,
        &[
            ("48.0 - 0.15*N*sin33 = N*cos33", Sign::Right),
            ("N = 63.5 N", Sign::Noted),
            ("N = 52.2 N", Sign::Right),
            ("d = 0.926 m", Sign::Right),
        ],
    );
    let told = given[0].line.message.to_string();
    assert!(told.contains("belongs to another value of d"), "{told}");
}

/// By hand, with tan φ_F = 0.3: P = 118 N·tan(28° ∓ 16.7°), 23.5 N with the friction up the slope,
/// 116 N with it down.
#[test]
fn a_balance_with_the_friction_turned_round_belongs_to_the_other_value() {
    use Sign::{Noted, Right, Wrong};
    let block = include_str!("block_pushed.json");
    for (line, sign, turned) in [
        ("W = N*cos 28 - 0.3*N*sin 28", Right, true),
        ("P*cos 28 = W*sin 28 + 0.3*N", Noted, true),
        ("P = N*sin 28 + 0.3*N*cos 28", Noted, true),
        ("P*cos28 - W*sin28 - FN = 0", Noted, true),
        ("P = Nx + FNx", Noted, true),
        ("P*cos 28 = W*sin 28 - 0.3*N", Noted, false),
        ("P = N*sin 28 - 0.3*N*cos 28", Noted, false),
        ("P = 117.6*tan(44.7)", Noted, false),
        ("P*cos 28 = W*cos 28 + 0.3*N", Wrong, false),
        ("P*sin 28 = W*sin 28 + 0.3*N", Wrong, false),
        ("P = N*cos 28 + 0.3*N*sin 28", Wrong, false),
        ("W = N*sin 28 - 0.3*N*cos 28", Wrong, false),
    ] {
        let mut session = of_file(block);
        let given = turns(&mut session, &[(line, sign)]);
        let told = given[0].line.message.to_string();
        let says = told.contains("belongs to another value of P");
        assert_eq!(says, turned, "{line}: {told}");
    }
    // Once a value of hers stands, the other working is told apart from it.
    let mut session = passed_to(block, "weight");
    let lines = [("N = 115 N", Right), ("P = N*sin 28 + 0.3*N*cos 28", Noted)];
    let given = turns(&mut session, &lines);
    let told = given[1].line.message.to_string();
    assert!(told.starts_with("That holds at another value"), "{told}");
}

/// A bar on a nail at its end stands upright above it, until it is moved a little, and hangs below.
#[test]
fn a_rest_that_does_not_last_is_no_answer_and_no_mistake() {
    let json = r#"{"leverwright": 1, "g": "9.8 m/s^2", "system": {
        "bodies": [{"name": "bar", "legs": [{"length": "2 m", "direction": {"angle": {"symbol": "θ", "sought": "angle"}, "from": "x-axis"}}]}],
        "weights": [{"noun": "bar", "body": "bar", "at": {"on": "bar", "at": "middle"}, "mass": "20 kg"}],
        "holds": [{"symbol": "H", "noun": "nail", "body": "bar", "at": {"on": "bar", "at": "foot"}, "kind": "hinge"}],
        "asked": ["sought"],
        "sought": {"given": "θ", "from": "1 deg", "to": "359 deg", "when": {"rests": "bar"}}},
        "text": {"title": "A bar", "statement": "A bar hangs from a nail."}}"#;
    let mut session = passed_to(json, "value that is sought");
    let given = turns(
        &mut session,
        &[
            ("θ = 90°", Sign::Noted),
            ("θ = 200°", Sign::Wrong),
            ("θ = 270°", Sign::Right),
        ],
    );
    let told = given[0].line.message.to_string();
    assert!(told.starts_with("There it balances"), "{told}");
}
