//! A line mended in a guided walk: what rested on it is told and asked again.

use super::at_the_weights;
use leverwright::session::{Course, Session, Sign};

/// A counter of 2.4 m, 9 kg, 13 kg at the tip, 18 kg at 0.5 m, the rope at 1.5 m: T 333.2 N, H 58.8 N. With
/// Wb on the other side T is 192.1 N, and H 199.9 N.
fn gone_on() -> Session {
    let mut session = at_the_weights("counter", 5041);
    for line in [
        "",
        "",
        "Wb = 88.2 N",
        "W1 = 127.4 N",
        "W2 = 176.4 N",
        "T*1.5 = 127.4*2.4 + 176.4*0.5 - 88.2*1.2",
        "go on",
    ] {
        session.submit(line);
    }
    let told = session.submit("T = 192.1 N").line;
    assert_eq!(told.sign, Sign::Follows, "{}", told.message);
    session
}

#[test]
fn a_value_that_rested_on_a_mended_line_is_asked_again() {
    let mut session = gone_on();
    let mended = session
        .submit("T*1.5 = 127.4*2.4 + 176.4*0.5 + 88.2*1.2")
        .line;
    let told = mended.message.to_string();
    assert_eq!(mended.sign, Sign::Right, "{told}");
    assert!(told.contains("rested on what you have put right"), "{told}");
    let again = session.submit("333.2 N").line;
    assert_eq!(again.sign, Sign::Right, "{}", again.message);
    let hinge = session.submit("H = 58.8 N").line;
    assert_eq!(hinge.sign, Sign::Right, "{}", hinge.message);
    assert_eq!(session.course(), Course::Finished);
    let summary = session.view().summary;
    let told: Vec<String> = summary.iter().map(ToString::to_string).collect();
    assert!(
        !told.join(" ").contains("From what you went on with"),
        "{told:?}"
    );
}

#[test]
fn a_value_that_the_mended_line_gives_as_well_stays() {
    let mut session = at_the_weights("counter", 5041);
    for line in ["", "", "Wb = 90 N", "go on", "W1 = 127.4 N"] {
        session.submit(line);
    }
    let mended = session.submit("Wb = 88.2 N").line;
    let told = mended.message.to_string();
    assert!(!told.contains("rested on"), "{told}");
}

#[test]
fn results_of_a_value_gone_on_with_are_told_beside_the_right_ones() {
    let mut session = gone_on();
    let hinge = session.submit("H = 199.9 N").line;
    assert_eq!(hinge.sign, Sign::Follows, "{}", hinge.message);
    let summary = session.view().summary;
    let told: Vec<String> = summary.iter().map(ToString::to_string).collect();
    let told = told.join(" ");
    let own =
        "From what you went on with came T = 192.1 N, H = 199.9 N; right is T = 333 N, H = 58.8 N.";
    assert!(told.contains(own), "{told}");
}
