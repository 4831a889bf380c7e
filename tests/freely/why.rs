//! `why`: on what a verdict rests, told without a value that is still to be found.

use super::again::sitting;
use leverwright::session::Sign;

/// The problem, lines before `why`, the asking line, and what its answer says (after `!`, does not
/// say).
#[rustfmt::skip]
const ASKED: &[(&str, &[&str], &str, &[&str])] = &[
    ("mast --seed 3", &["Wb = 617.4 N"], "why", &["Line 1 was read as Wb = 617.4 N", "weight of the mast", "compared", "They agree."]),
    ("mast --seed 3", &["T = 700 N"], "why?", &["tension of the rope", "They differ", "!811", "!810"]),
    ("mast --seed 3", &["T = 700 N", "Hx = -700 cos 10"], "Why line 2", &["Line 2 was read", "your own line 1"]),
    ("mast --seed 3", &["T = 700 N", "Wb = 617.4 N"], "why 1", &["Line 1 was read", "They differ"]),
    ("mast --seed 3", &["T*4.2*sin 65 = 617.4*2.7*cos 55 + 695.8*4.5*cos 55 + 107.8*5.4*sin 55"], "why is it wrong", &["taken as an equation", "They differ", "!811", "!810"]),
    ("mast --seed 3", &["the hinge pushes too"], "why", &["no number in it was compared"]),
    ("mast --seed 3", &["Hx = T +"], "why", &["could not be read"]),
    ("mast --seed 3", &["Wb + mb = 3"], "why", &["compared in kind"]),
    ("mast --seed 3", &["T = 811 N"], "why 7", &["There is no line 7"]),
    ("mast --seed 3", &["T = 811 N", "T < W2"], "why", &["taken as a statement", "!no number"]),
    ("mast --seed 3", &["3 sin 65"], "why", &["settles nothing", "!differ"]),
    ("boom", &["Hx = T cos 28", "Hx = -361 N"], "why", &["By itself it agrees", "sense"]),
    ("ring", &["T1 cos 50 = T2 cos 25 + 70", "T1 sin 50 + T2 sin 25 = 254.8", "T2 = 114.05 N"], "why", &["your own balance"]),
];

#[test]
fn every_verdict_tells_on_what_it_rests() {
    let mut others = Vec::new();
    for (problem, before, line, said) in ASKED {
        let mut session = sitting(problem);
        session.submit("freely");
        for line in *before {
            session.submit(line);
        }
        let told = session.submit(line).line;
        let message = told.message.to_string();
        let holds = |said: &&&str| match said.strip_prefix('!') {
            Some(said) => message.contains(said),
            None => !message.contains(**said),
        };
        let missing: Vec<&&str> = said.iter().filter(holds).collect();
        if told.sign != Sign::Talk || told.number.is_some() || !missing.is_empty() {
            others.push(format!("{problem}: {line}: {missing:?}: {message}"));
        }
    }
    assert!(others.is_empty(), "{others:#?}");
}

#[test]
fn where_no_line_was_judged_why_is_no_command() {
    let mut session = sitting("mast --seed 3");
    let told = session.submit("why").line;
    assert!(
        !told.message.to_string().contains("compared"),
        "{}",
        told.message
    );
}
