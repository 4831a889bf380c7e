//! Single lines that do not hold and what they show, each beside a near one that holds; and two
//! mistakes in one line.

use super::cases;
use super::pupil::{Line, Whose, Wrong, first_apart, work};
use crate::corpus::drawn;
use leverwright::mistakes::CATALOGUE;
use leverwright::session::{Ranked, Session, Sign};

/// A mast of 5.4 m at 55° with the horizontal: 63 kg, 71 kg at 4.5 m, 11 kg at the tip; the rope at
/// 4.2 m makes 65° with it and 10° with the horizontal. α = 35°.
const MAST: &str = "mast-8Y83240-RQGKE";

/// A walkway of 3.0 m with 56 kg, 68 kg at 0.9 m, the rope at its tip, 35° above it.
const WALKWAY: &str = "walkway-0AHRJ6-EEXYX";

/// A walkway of 3.4 m with 52 kg, 68 kg at 2.5 m, the rope at its tip, 25° above the horizontal.
const WATCHER: &str = "walkway-004MFT-EEXS3";

/// A counter of 18 kg with two boxes on it, a vertical rope.
const COUNTER: &str = "counter-5C9NN-BZMQK";

/// A mast of 7.0 m at 50° with the horizontal: 39 kg, 55 kg at the tip; a level rope at 4.3 m.
const LEVEL_ROPE: &str = "mast-002A12F-RQG7R";

/// A mast of 6.8 m at 20° with the vertical: 39 kg, 50 kg at the tip; the rope at 3.9 m makes 80° with
/// the mast.
const KNOT: &str = "mast-6XMQJP0-RQG53";

/// A line, what it shows flatly (of two thoughts both), and what is said of it.
#[rustfmt::skip]
const WRONG: &[(&str, &[&str], &str)] = &[
    ("Wb = 63000*9.8", &["gram-kilogram"], "a factor of a thousand"),
    ("Wb = 71*9.8", &["masses-exchanged"], ""),
    ("Wb*sin35*270 + W1*4.5*sin35 + W2*5.4*sin35 = T*sin65*4.2", &["centimetre-metre"], "a factor of a hundred"),
    ("W1*1.8*sin35 + W2*2.7*sin35 = T*sin65*1.5", &["wrong-pivot-without-the-hinge-term"], "the hinge's force turns the mast too"),
    ("Hy = Wb*sin35 + W1*sin35 + W2*sin35 - T*sin10", &["weight-not-downward"], "points straight down"),
    ("Hx = 2*T*cos10", &["force-invented"], "at one place only"),
    ("Hy = Wb + W1 + W2 - 2*T*sin10", &["force-invented"], "at one place only"),
    ("gamma = 2*(55 + 10)", &["doubled-angle"], "twice the angle"),
    ("alpha = (90 - 55)/2", &["halved-angle"], "half the angle"),
    ("T = (617.4*2.7*sin35 + 695.8*4.5*sin35 - 107.8*5.4*sin35)/(4.2*sin65)", &["turns-the-wrong-way"], ""),
    ("T = (617.4*2.7*sin35 + 695.8*4.5*sin35 + 107.8*5.4*sin35)/(4.2*sin65)/3", &["pull-shared-between-forces"], "number of weights"),
    // Two at once.
    ("Wb*sin35*5.4 + W1*4.5*cos35 + W2*5.4*sin35 = T*sin65*4.2", &["sine-cosine-exchanged", "own-weight-at-tip"], "Two things at once"),
    ("Wb*sin35*2.7 + W1*4.5*sin35 = T*sin65*5.4", &["force-missing", "rope-at-tip"], "Two things at once"),
    ("Wbperp = 63*cos35", &["mass-for-weight", "sine-cosine-exchanged"], "Two things at once"),
    // The form alone shows these.
    ("Wb = 65*9.8", &["misread"], "mb is not 65. Look it up once more"),
    ("Wb*sin35*2.7 + W1*4.6*sin35 + W2*5.4*sin35 = T*sin65*4.2", &["misread"], "d1 is not 4.6. Look it up once more"),
    ("Wb*sin35*2.7 + W1*4.5*sin35 + W2*5.4*sin35 + Hy*5.4*sin35 = T*sin65*4.2", &["surplus"], "the hinge's own force"),
];

/// Workings of which a line, counted from the first, shows this thought flatly; an empty name is none.
#[rustfmt::skip]
const AFTER: &[(&str, &[&str], usize, &str)] = &[
    // The slope of the rope for that of the hinge's force.
    (WALKWAY, &["T = 825 N", "psi = beta"], 1, "reaction-along-the-pull"),
    (WALKWAY, &["tan psi = Ty/Tx"], 0, "reaction-along-the-pull"),
    (WALKWAY, &["psi = atan(Ty/Tx)"], 0, "reaction-along-the-pull"),
    (MAST, &["psi = beta"], 0, "reaction-along-the-pull"),
    (MAST, &["psi = theta"], 0, "reaction-along-the-body"),
    // One distance in every term cancels; the distances are there, and they are the wrong ones.
    (WATCHER, &["T = (Wb*2.5 + W1*2.5)/(2.5*sin 25)"], 0, ""),
    // Without any distance these are moments without theirs as well: nothing is proved.
    (WATCHER, &["T = (Wb + W1)/sin 25"], 0, ""),
    (WATCHER, &["T = Wb + W1"], 0, "no-distances"),
    // A pull that was told: how it was found shows in no part of it.
    (LEVEL_ROPE, &["T = 1189 N", "Hx = 1189*cos 50"], 1, ""),
    (LEVEL_ROPE, &["T = 764 N", "Hx = 764*cos 50"], 1, ""),
    (MAST, &["psi = atan(Hx/Hy)"], 0, "arctangent-inverted"),
    (MAST, &["tan psi = Hx/Hy"], 0, "arctangent-inverted"),
    (MAST, &["H = Hx + Hy"], 0, "resultant"),
    (MAST, &["H = T"], 0, ""),
    (COUNTER, &["H = T"], 0, ""),
    (MAST, &["Tx = T/cos 10"], 0, "part-by-dividing"),
    (MAST, &["Ty = T*tan 10"], 0, "part-by-tangent"),
    (MAST, &["Tx = T*sin 10"], 0, "sine-cosine-exchanged"),
    // Moments about another point with the hinge's force in them are no balance of forces.
    (COUNTER, &["Wb*1.1 + T*0.8 = W2*0.7 + H*2.2"], 0, ""),
    (COUNTER, &["H*1.1 = W1*1.1 + T*0.4"], 0, ""),
    (COUNTER, &["H + T = Wb + W1"], 0, "force-missing"),
    // With the sign that the line has it is the rope that is turned, not the weight.
    (WATCHER, &["Hy = Wb + T*sin 25"], 0, "direction-reversed"),
    (MAST, &["Ty = T"], 0, ""),
    // A tangent is no sine.
    (WATCHER, &["Hx = Tx*tan 25"], 0, ""),
    // The printed angle is measured from the mast.
    (KNOT, &["Tx = T*cos beta"], 0, "given-angle-in-part"),
    (KNOT, &["Hx = T*cos beta"], 0, "given-angle-in-part"),
];

/// Lines near those that hold.
const RIGHT: &[&str] = &[
    "Wb = 63 g",
    "Wb = 63000 g*9.8 m/s^2",
    "Wb = 0.063*9.8 kN",
    "Wb*sin35*270 + W1*450*sin35 + W2*540*sin35 = T*sin65*420",
    "Wb*sin35*2.7 + W1*4.5*sin35 + W2*5.4*sin35 = T*sin65*4.2",
    "Hy = Wb + W1 + W2 - T*sin10",
    "Hx = -T*cos10",
    "gamma = 55 + 10",
    "alpha = 145",
    "T = (617.4*2.7*sin35 + 695.8*4.5*sin35 + 107.8*5.4*sin35)/(4.2*sin65)",
];

fn ranked(line: &str) -> Ranked {
    let session: Session = drawn(MAST);
    session.thoughts_in(&[line.to_owned()]).remove(0)
}

/// True if one of the thoughts is the mistake, one of that family, or a slip of that name.
fn names(ranked: &Ranked, wanted: &str) -> bool {
    ranked.thoughts.iter().any(|thought| {
        let mut alike = thought.alike.iter();
        let alike = alike.any(|(id, family)| *id == wanted || *family == wanted);
        thought.flat && (thought.id == wanted || alike || thought.family == Some(wanted))
    })
}

#[test]
fn a_wrong_line_shows_its_thoughts() {
    let mut others = Vec::new();
    for (line, wanted, said) in WRONG {
        let found = ranked(line);
        let told = found.said.to_string();
        let all = wanted.iter().all(|wanted| names(&found, wanted));
        if found.sign != Sign::Wrong || !all || !told.contains(said) {
            let ids: Vec<&str> = found.thoughts.iter().map(|one| one.id.as_str()).collect();
            others.push(format!("{line}: {:?} {ids:?} {told}", found.sign));
        }
    }
    assert!(others.is_empty(), "{others:#?}");
}

#[test]
fn a_line_after_others_shows_its_thought_or_none() {
    let mut others = Vec::new();
    for (code, lines, at, wanted) in AFTER {
        let session: Session = drawn(code);
        let lines: Vec<String> = lines.iter().map(ToString::to_string).collect();
        let found = session.thoughts_in(&lines).remove(*at);
        let flat = found.thoughts.iter().any(|thought| thought.flat);
        let as_wanted = match wanted.is_empty() {
            true => !flat,
            false => names(&found, wanted),
        };
        if found.sign == Sign::Right || !as_wanted {
            let ids: Vec<&str> = found.thoughts.iter().map(|one| one.id.as_str()).collect();
            others.push(format!(
                "{lines:?}: {:?} {ids:?} {}",
                found.sign, found.said
            ));
        }
    }
    assert!(others.is_empty(), "{others:#?}");
}

/// Numbers alone: g taken as ten on the way to the pull, and angles put together the wrong way.
#[test]
fn a_number_shows_another_acceleration_or_an_angle_put_together_wrongly() {
    let first = |line: &str| ranked(line).thoughts.first().map(|one| one.id.clone());
    // 810.71 N · 10/9.8, and 810.71 N · sin 65°/sin 45°.
    assert_eq!(first("T = 827 N").as_deref(), Some("ten"));
    let angles = first("T = 1040 N");
    assert_eq!(angles.as_deref(), Some("angle-sum-for-difference"));
}

#[test]
fn a_right_line_near_it_shows_none() {
    let mut others = Vec::new();
    for line in RIGHT {
        let found = ranked(line);
        let holds = matches!(found.sign, Sign::Right | Sign::Rounded | Sign::Noted);
        if !holds || !found.thoughts.is_empty() {
            others.push(format!("{line}: {:?} {}", found.sign, found.said));
        }
    }
    assert!(others.is_empty(), "{others:#?}");
}

#[test]
fn a_balance_solved_wrongly_is_told_from_a_wrong_balance() {
    let balance = "617.4*2.7*sin35 + 695.8*4.5*sin35 + 107.8*5.4*sin35 = T*sin65*4.2";
    let solved = "T = (617.4*2.7*sin35 + 695.8*4.5*sin35 - 107.8*5.4*sin35)/(4.2*sin65)";
    let lines = [balance.to_owned(), solved.to_owned()];
    let found = drawn(MAST).thoughts_in(&lines).remove(1);
    assert_eq!(
        found.thoughts[0].id, "solved-wrongly",
        "{:?}",
        found.thoughts
    );
}

/// The pupils' own arithmetic with two mistakes in one line: both are named, and flatly.
#[test]
fn verif_two_mistakes_in_one_line_are_named_together() {
    let (mut all, mut found) = (0, 0);
    let mut missed = Vec::new();
    for case in cases(4) {
        let ones = [
            Wrong::OwnAtTip,
            Wrong::TermLeftOut(1),
            Wrong::Turned(0),
            Wrong::RopeAtTip,
        ];
        let others = [
            Wrong::RopeAtTip,
            Wrong::OwnAtTip,
            Wrong::FarEnd(1),
            Wrong::TermLeftOut(0),
        ];
        let crossed = [
            (Wrong::SineCosine(Whose::Weight(0)), Wrong::Mass(0)),
            (Wrong::NotResolved(Whose::Rope), Wrong::OwnAtTip),
        ];
        let pairs = ones.into_iter().zip(others).chain(crossed);
        for (one, other) in pairs.filter(|(one, other)| one != other) {
            let told = |wrongs: &[Wrong]| work(&case.paper, wrongs, 6);
            let (Some(right), Some(both)) = (told(&[]), told(&[one, other])) else {
                continue;
            };
            let (Some(first), Some(second)) = (told(&[one]), told(&[other])) else {
                continue;
            };
            let at = first_apart(&right, &both);
            let is_here = |lines: &[Line]| first_apart(&right, lines) == at;
            let Some(step) = at.filter(|_| is_here(&first) && is_here(&second)) else {
                continue;
            };
            let form = |lines: &[Line]| {
                let line = lines.iter().find(|line| line.step == step);
                line.map(|line| line.form.clone())
            };
            // What the one hides of the other cannot be seen.
            if form(&both) == form(&first) || form(&both) == form(&second) {
                continue;
            }
            let typed = form(&both).unwrap();
            let ranked = case.session.thoughts_behind(step, &typed);
            if !matches!(ranked.sign, Sign::Wrong) {
                continue;
            }
            let family = |wrong: Wrong| {
                let mistake = CATALOGUE.iter().find(|one| one.id == wrong.id());
                mistake.unwrap().family
            };
            let both = [one, other]
                .iter()
                .all(|wrong| names(&ranked, family(*wrong)));
            all += 1;
            found += usize::from(both);
            if !both {
                let ids: Vec<&str> = ranked.thoughts.iter().map(|one| one.id.as_str()).collect();
                missed.push(format!("{one:?} + {other:?} `{typed}` {ids:?}"));
            }
        }
    }
    assert!(all > 20, "{all}");
    assert!(found * 100 >= all * 80, "{found} of {all}: {missed:#?}");
}
