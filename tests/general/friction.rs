//! What learners type of rough contacts: `f`, `μ_s`, ratios and inequalities.

use super::ends::passed_to;
use super::talk::faults_after;
use leverwright::session::Sign;

const RIGHT: Sign = Sign::Right;
const NOTED: Sign = Sign::Noted;
const WRONG: Sign = Sign::Wrong;

#[test]
fn the_law_of_friction_is_read_however_it_is_put() {
    let (law, slope) = ("friction of the floor", "friction of the slope");
    let rows = [
        ("ladder", law, "FN = 0.35 N", RIGHT),
        ("ladder", law, "FN = μ_s N", RIGHT),
        ("ladder", law, "FN = mu_s*N", RIGHT),
        ("ladder", law, "FN = μs N", RIGHT),
        ("ladder", law, "FN/N = 0.35", RIGHT),
        ("ladder", law, "FN/N = μ", RIGHT),
        ("ladder", law, "N = FN/0.35", RIGHT),
        ("ladder", law, "μ = FN/N", RIGHT),
        ("ladder", law, "FN/N = 0.4", WRONG),
        ("ladder", law, "N/FN = 0.35", WRONG),
        ("ladder", law, "FN = N/0.35", WRONG),
        ("ladder", law, "FN = 0.35*Wb", WRONG),
        // An inequality is neither right nor wrong.
        ("ladder", law, "FN ≤ μN", NOTED),
        ("ladder", law, "FN <= 0.35*N", NOTED),
        ("ladder", law, "FN < 0.2*N", NOTED),
        ("ladder_mu", law, "μ ≥ 0.233", NOTED),
        ("ladder", law, "FN => 0.35 N", RIGHT),
        ("ladder", law, "FN -> 0.35 N", RIGHT),
        // Of one block m and W can be no other's.
        ("incline_slip", slope, "FN = μ m g cos θ", RIGHT),
        ("incline_slip", slope, "m g sin θ = μ m g cos θ", RIGHT),
        ("incline_slip", slope, "W = mg", RIGHT),
        ("incline_slip", slope, "W = m*9", WRONG),
        ("incline_slip", slope, "f = μ N", RIGHT),
    ];
    let rows = rows.map(|(name, title, line, sign)| (name, title, &[][..], line, sign));
    assert_eq!(faults_after(&rows), Vec::<String>::new());
}

/// Where another force is called F, `f` is the friction that is asked if it holds of it. With a
/// gust of 30 N the wall pushes 30 N more than friction.
#[test]
fn a_small_f_is_the_friction_that_is_asked() {
    let gust = r#""mass": "70 kg"}, {"symbol": "P", "noun": "gust", "body": "ladder", "force": "30 N",
        "at": {"on": "ladder", "at": "middle"}, "direction": "right"}"#;
    let ladder = include_str!("../boards/ladder.json").replacen("\"mass\": \"70 kg\"}", gust, 1);
    for (line, sign) in [
        ("f = 0.35*N", RIGHT),
        ("f = μ N", RIGHT),
        ("f = 0.2*N", WRONG),
        ("F = 0.35*N", WRONG),
    ] {
        let turn = passed_to(&ladder, "friction of the floor").submit(line);
        assert_eq!(turn.line.sign, sign, "{line}: {}", turn.line.message);
    }
}

/// That both sides are equal is said only where they are.
#[test]
fn an_inequality_is_asked_for_as_an_equation() {
    let ladder = include_str!("../boards/ladder.json");
    for (line, equal) in [("FN ≤ μ*N", true), ("FN ≥ 2*N", false)] {
        let turn = passed_to(ladder, "friction of the floor").submit(line);
        let told = turn.line.message.to_string();
        assert_eq!(told.contains("write it with ="), equal, "{line}: {told}");
    }
}

/// By hand: P = 113·1.4/2.1 = 75.1 N, so FN = −48.3 N as the key counts it, N = 89.5 N, and
/// μ = 48.3/89.5 = 0.539. A coefficient is made of sizes, whatever sign she found.
#[test]
fn a_coefficient_is_made_of_sizes() {
    let rod = include_str!("rod_on_peg_mu.json");
    for (line, sign) in [
        ("μ = FN/N", Sign::Right),
        ("μ = -FN/N", Sign::Right),
        ("μ = |FN|/N", Sign::Right),
        ("μ = 48.3/89.5", Sign::Right),
        ("μ*N = FN", Sign::Noted),
        ("μ = N/FN", Sign::Wrong),
        ("μ = FN/P", Sign::Wrong),
    ] {
        let mut session = super::ends::of_file(rod);
        session.submit("FN = -48.3 N");
        session.submit("N = 89.5 N");
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, sign, "{line}: {}", turn.line.message);
    }
}

/// By hand: the peg pushes the rod with 48.3 N to the left, so friction is 48.3 N to the right: with
/// the minus that the key gives it, it stands on the side of the peg's part. As a size, or told with
/// its way, it may stand on either side.
#[test]
fn what_she_found_with_a_minus_is_counted_so() {
    let rod = include_str!("rod_on_peg_mu.json");
    for (found, line, sign) in [
        ("FN = -48.3 N", "Px + FN = 0", RIGHT),
        ("FN = -48.3 N", "Px = -FN", RIGHT),
        ("FN = -48.3 N", "Px - FN = 0", WRONG),
        ("FN = -48.3 N", "Px = FN", WRONG),
        ("FN = -48.3 N", "P*sin 40° - FN = 0", WRONG),
        ("FN = -48.3 N", "FN = 0.539*N", RIGHT),
        ("FN = -48.3 N", "FN/N = 0.539", RIGHT),
        ("FN = 48.3 N", "Px + FN = 0", RIGHT),
        ("FN = 48.3 N", "Px - FN = 0", RIGHT),
        ("FN = 48.3 N to the right", "Px = FN", RIGHT),
    ] {
        let mut session = super::ends::of_file(rod);
        session.submit(found);
        let turn = session.submit(line);
        assert_eq!(
            turn.line.sign, sign,
            "{found}; {line}: {}",
            turn.line.message
        );
    }
}

/// Where only a part of a contact's force is asked, it is the friction, and `f` is that.
#[test]
fn a_part_that_is_asked_of_a_contact_is_asked_in_practice() {
    let ladder = include_str!("../boards/ladder_mu.json");
    let asked = ladder.find("\"asked\"").unwrap();
    let end = asked + ladder[asked..].find(']').unwrap() + 1;
    let only = r#""asked": ["sought", {"horizontal": "N"}]"#;
    let ladder = format!("{}{only}{}", &ladder[..asked], &ladder[end..]);
    let system = leverwright::lesson::parse_system(&ladder).unwrap();
    let mut session =
        leverwright::session::Session::start_general(&system, leverwright::text::Words::english())
            .unwrap();
    let turn = session.submit("freely");
    assert!(
        turn.question.to_string().contains("FN"),
        "{}",
        turn.question
    );
}
