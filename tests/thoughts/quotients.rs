//! Solved pulls and what they show flatly: only a form that is literally that of the thought proves it.
//! In a quotient ratios and lengths cancel, and what is left agrees with thoughts that nobody had. By
//! hand; each wrong line is one thing done otherwise in the moment balance, and what is said is the
//! plain reading of the form (physical sense, no source).

use crate::corpus::drawn;
use leverwright::session::{Session, Sign};

/// A mast of 5.2 m, 79 kg, at 50°; 54 kg at 4.4 m; the rope at the tip. α = 40°, γ = 65°.
const MAST: &str = "mast-106VTF5-RQGAK";
/// A mast of 5.4 m at 55°, a level rope at 3.4 m, 69 kg at the tip. α = 35°, γ = 55°.
const LEVEL: &str = "mast-000KC5P-RQG2R";
/// A mast of 6.6 m at 40°, a level rope at 3.9 m, 54 kg at the tip. α = 50°, γ = 40°.
const LOW: &str = "mast-00208RY-RQGGT";
/// A mast of 5.4 m at 65°, 43 kg at 4.6 m, the rope at the tip. α = 25°, γ = 105°.
const STEEP: &str = "mast-1081SKZ-RQGV8";
/// A mast of 6.6 m at 65°, 75 kg at 4.1 m, 12 kg at the tip, the rope at 3.1 m. α = 25°, γ = 100°.
const TWO: &str = "mast-BDC903T-RQG0W";
/// A mast of 5.0 m at 25° with the vertical, 81 kg at the tip, the rope at 3.4 m. α = 25°, γ = 50°.
const BENT: &str = "mast-6X7DHM4-RQGB8";
/// A mast of 5.0 m at 40° with the vertical, 32 kg at 4.5 m, 23 kg at 2.8 m, a level rope at the tip.
const TOP: &str = "mast-6YTP0X3-RQGFP";
/// A mast at 70° with a level rope: θ = γ = 70°, α = 20°; 31 kg at the tip.
const SAME: &str = "mast-0010AT4-RQG06";
/// A mast with a level rope at 35° with the vertical: α = 35°, γ = 55°.
const KNOT: &str = "mast-6YXYHGC-RQGFS";
/// A mast whose weights are 411.6 N and 568.4 N, the rope at 25°.
const TIP: &str = "mast-10EFSR9-RQG2S";
/// A walkway of 3.0 m, 28 kg; 58 kg at 2.3 m; the rope at 1.8 m, 65°.
const WALKWAY: &str = "walkway-00FTH5-EEXP1";
/// A walkway of 3.4 m, 44 kg; 56 kg at 2.2 m; the rope at 2.8 m, 25°.
const FLAT: &str = "walkway-020K7W-EEX97";
/// A walkway of 4.2 m, 52 kg; 70 kg at 1.5 m; the rope at 2.0 m, 35°.
const NEAR: &str = "walkway-04NSXD-EEXF2";
/// A counter of 2.4 m, 9 kg; 15 kg at 1.3 m; the rope at the tip.
const COUNTER: &str = "counter-00HFS-BZM6V";
/// A counter of 2.4 m; 12 kg at the tip, 11 kg at 0.4 m; the rope at 1.6 m.
const CRATES: &str = "counter-5R7MT-BZMR8";

/// Lines, of which the last shows this thought flatly, or nothing flatly where it is empty.
type Row = (&'static str, &'static [&'static str], &'static str);

/// One thing is done otherwise, and all else in the line is as it is right.
#[rustfmt::skip]
const PROVED: &[Row] = &[
    (MAST, &["T = (Wb*2.6 sin 40+W1*4.4 sin 40)/(5.2 cos 65)"], "sine-cosine-exchanged"),
    (MAST, &["T = (Wb*2.6 cos 50+W1*4.4 cos 50)/(5.2 cos 65)"], "sine-cosine-exchanged"),
    (MAST, &["T = (Wb*L/2*sin alpha+W1*d1*sin alpha)/(L*cos gamma)"], "sine-cosine-exchanged"),
    (MAST, &["T = (79*9.8*2.6*sin 40+54*9.8*4.4*sin 40)/(5.2*cos 65)"], "sine-cosine-exchanged"),
    (MAST, &["T = sin 40*(774.2*2.6+529.2*4.4)/(5.2 cos 65)"], "sine-cosine-exchanged"),
    (MAST, &["T = (Wb*2.6*0.643+W1*4.4*0.643)/(5.2 cos 65)"], "sine-cosine-exchanged"),
    // What was worked out before stands for its part.
    (MAST, &["T = (498*2.6+340*4.4)/(5.2 cos 65)"], "sine-cosine-exchanged"),
    (MAST, &["T = (1294+1497)/(5.2*cos 65)"], "sine-cosine-exchanged"),
    (MAST, &["T = (Wb*2.6 cos 50+W1*4.4 cos 50)/(5.2 sin 15)"], "given-angle-as-is"),
    (MAST, &["T = (Wb*2.6 cos 40+W1*4.4 cos 40)/(5.2 sin 65)"], "sine-cosine-exchanged"),
    (MAST, &["T = (Wb*2.6+W1*4.4)*cos 40/(5.2 sin 65)"], "sine-cosine-exchanged"),
    (MAST, &["T = (Wb*2.6+W1*4.4)*sin 50/(5.2 sin 65)"], "complement"),
    (MAST, &["T = (Wb*2.6 sin 65+W1*4.4 sin 65)/(5.2 sin 65)"], "angle-of-another-force"),
    (MAST, &["T = (Wb*2.6 sin 40+W1*4.4 sin 40)/5.2"], "not-resolved"),
    (MAST, &["T = (Wb*2.6+W1*4.4)/(5.2 sin 65)"], "not-resolved"),
    (MAST, &["T = (Wb*2.6 sin 40+W1*4.4 sin 40)/5.2*sin 65"], "multiplied-at-the-end"),
    (MAST, &["T = (Wb*2.6 sin 40+W1*4.4 sin 40)/sin 65"], "arm-not-divided-out"),
    (MAST, &["T = (Wb*5.2 sin 40+W1*4.4 sin 40)/(5.2 sin 65)"], "own-weight-at-tip"),
    (MAST, &["T = (Wb*2.6 sin 40+W1*0.8 sin 40)/(5.2 sin 65)"], "from-the-far-end"),
    (MAST, &["T = (Wb*2.6 sin 40+W1*2.6 sin 40)/(5.2 sin 65)"], "load-at-middle"),
    (MAST, &["T = (Wb*2.6 sin 40-W1*4.4 sin 40)/(5.2 sin 65)"], "turns-the-wrong-way"),
    (MAST, &["T = (79*2.6 sin 40+54*4.4 sin 40)/(5.2 sin 65)"], "mass-for-weight"),
    (MAST, &["T = W1*4.4 sin 40/(5.2 sin 65)"], "own-weight-left-out"),
    (MAST, &["T*5.2*sin 40 = Wb*2.6*sin 40 + W1*4.4*sin 40"], "angle-of-another-force"),
    // One right ratio is that of the other force: which one was exchanged shows by its side.
    (LEVEL, &["T = (Wb*2.7 sin 35+W1*5.4 sin 35)/(3.4 cos 55)"], "sine-cosine-exchanged"),
    (LOW, &["T = (Wb*3.3 sin 50+W1*6.6 sin 50)/(3.9 cos 40)"], "sine-cosine-exchanged"),
    (LOW, &["T = (Wb*3.3 sin 50+W1*6.6 sin 50)/(6.6 sin 40)"], "rope-at-tip"),
    (LOW, &["T = (Wb*6.6 sin 50+W1*6.6 sin 50)/(3.9 sin 40)"], "own-weight-at-tip"),
    (TWO, &["T = (Wb*3.3+W1*4.1+W2*6.6)*cos 65/(3.1 cos 80)"], "sine-cosine-exchanged"),
    (TWO, &["T = (Wb*3.3*cos 65+W1*2.5*cos 65+W2*6.6*cos 65)/(3.1 sin 80)"], "from-the-far-end"),
    (TWO, &["T = (Wb*3.3*cos 65+W1*4.1*cos 65-W2*6.6*cos 65)/(3.1 sin 80)"], "turns-the-wrong-way"),
    (TWO, &["T = (Wb*3.3*sin 25+W1*4.1*sin 25)/(3.1 sin 80)"], "force-forgotten"),
    (TOP, &["T = (529.2*2.5+313.6*4.5+225.4*2.8)*sin 40/5"], "not-resolved"),
    (WALKWAY, &["T = (Wb*1.5+W1*2.3)/(1.8 cos 65)"], "exchanged-at-the-end"),
    (WALKWAY, &["T = (411.6+1307.3)/(1.8*cos 65)"], "exchanged-at-the-end"),
    (WALKWAY, &["T = 1719/(1.8*cos 65)"], "exchanged-at-the-end"),
    (WALKWAY, &["T = (Wb*1.5+W1*2.3)*sin 65/1.8"], "multiplied-at-the-end"),
    (WALKWAY, &["T = (Wb*1.5+W1*2.3)/(3 sin 65)"], "rope-at-tip"),
    (WALKWAY, &["T = (Wb*1.5+W1*2.3)/(1.8*tan 65)"], "tangent-used"),
    (WALKWAY, &["T = (Wb*1.5+W1*0.7)/(1.8 sin 65)"], "from-the-far-end"),
    (FLAT, &["T = (Wb*1.7+W1*2.2)*sin 25/2.8"], "multiplied-at-the-end"),
    (NEAR, &["T = (510*2.1+686*1.5)/2*sin 35"], "multiplied-at-the-end"),
    (NEAR, &["T = (510*2.1+686*2.7)/(2 sin 35)"], "from-the-far-end"),
    (NEAR, &["T = (510*4.2+686*1.5)/(2 sin 35)"], "own-weight-at-tip"),
    (COUNTER, &["T = (Wb*1.2+W1*1.1)/2.4"], "from-the-far-end"),
    (COUNTER, &["T = 147*1.3/2.4"], "own-weight-left-out"),
    // Whole forces have no distance, whatever was thought of the hinge.
    (COUNTER, &["T = Wb+W1"], "forces-for-moments"),
    (WALKWAY, &["T = 86*9.8/(2*sin 65)"], "shared-equally-upright"),
    (COUNTER, &["T = Wb*1.2+W1*1.3"], "arm-not-divided-out"),
    // No sum of the others: that number was misread.
    (COUNTER, &["T = (Wb*1.2+W1*1.3)/2.7"], "misread"),
    (CRATES, &["T = (Wb*1.2+W1*2.4+W2*2)/1.6"], "from-the-far-end"),
    (CRATES, &["T = (Wb*1.2+W1*2.4+W2*0.4)/(2.4-1.6)"], "from-the-far-end"),
    (TIP, &["Hy = 411.6+568.4"], "rope-pull-forgotten-upward"),
    // The second line shows its own ratio, though the first comes to the same.
    (KNOT, &["Tp = T cos 55"], "sine-cosine-exchanged"),
    (KNOT, &["Tp = T sin 35", "Tp = T cos 55"], "sine-cosine-exchanged"),
];

/// The line agrees with some thought as a function, and its form is another, or that of two.
#[rustfmt::skip]
const UNPROVED: &[Row] = &[
    // A ratio in every term cancels against the same one below.
    (MAST, &["T = (Wb*2.6 cos 50+W1*4.4 cos 50)/(5.2 cos 50)"], "not-resolved"),
    (MAST, &["T = (Wb*2.6 sin 50+W1*4.4 sin 50)/(5.2 sin 50)"], "not-resolved"),
    (MAST, &["T = (Wb*2.6 cos 25+W1*4.4 cos 25)/(5.2 cos 25)"], "not-resolved"),
    (MAST, &["T = (Wb*2.6 sin 65+W1*4.4 sin 65)/(5.2 cos 50)"], ""),
    (MAST, &["T = (Wb*2.6 sin 65+W1*4.4 sin 65)/(5.2 sin 40)"], ""),
    (STEEP, &["T = (Wb*2.7 sin 75+W1*4.6 sin 75)/(5.4 sin 25)"], ""),
    (BENT, &["T = (Wb*2.5 sin 50+W1*5 sin 50)/(3.4 sin 25)"], ""),
    (LEVEL, &["T = (Wb*2.7 sin 55+W1*5.4 sin 55)/(3.4 cos 55)"], "wrong-leg"),
    (LOW, &["T = (Wb*3.3 sin 40+W1*6.6 sin 40)/(3.9 cos 40)"], "wrong-leg"),
    (TWO, &["T = (Wb*3.3+W1*4.1+W2*6.6)*cos 65/(3.1 cos 65)"], ""),
    (TWO, &["T = (Wb*3.3+W1*4.1+W2*6.6)*sin 80/(3.1 cos 65)"], ""),
    (WALKWAY, &["T = (Wb*1.5 cos 65+W1*2.3 cos 65)/(1.8 cos 65)"], "not-resolved"),
    (FLAT, &["T = (Wb*1.7 cos 25+W1*2.2 cos 25)/(2.8 cos 25)"], "not-resolved"),
    (NEAR, &["T = (510*2.1+686*1.5)*cos 35/(2*cos 35)"], "not-resolved"),
    // A ratio in each term was not put behind the whole.
    (WALKWAY, &["T = (Wb*1.5 sin 65+W1*2.3 sin 65)/1.8"], ""),
    (FLAT, &["T = (Wb*1.7 sin 25+W1*2.2 sin 25)/2.8"], ""),
    (NEAR, &["T = (510*2.1 sin 35+686*1.5 sin 35)/2"], ""),
    (NEAR, &["T = Wb*2.1*sin 35/2+W1*1.5*sin 35/2"], ""),
    (NEAR, &["T = (509.6*2.1+686*1.5)/2*0.574"], "divides-for-multiplies"),
    (WALKWAY, &["T = (Wb*1.5*cos 65+W1*2.3*cos 65)/(1.8*sin 65)"], ""),
    // Behind the whole it may belong to the weights or to the pull.
    (TOP, &["T = (529.2*2.5+313.6*4.5+225.4*2.8)/5*0.766"], ""),
    // Nothing resolved may be what cancelled.
    (TOP, &["T = 529.2*2.5+313.6*4.5+225.4*2.8"], ""),
    // No distance, or no force of the hinge: the form is that of both.
    (WALKWAY, &["T = (Wb+W1)/sin 65"], "vertical-balance"),
    (NEAR, &["T = (510+686)/sin 35"], "vertical-balance"),
    (COUNTER, &["T = 88.2+147"], "vertical-balance"),
    // An angle of two places.
    (SAME, &["W1p = 303.8 sin 70"], "wrong-leg"),
    (LEVEL, &["T = (Wb*2.7 sin 35+W1*5.4 sin 35)/(3.4 sin 35)"], "wrong-leg"),
    // Numbers that come to the same.
    (COUNTER, &["T = Wb+W1-123.7"], ""),
    (COUNTER, &["T = 235.2*2.4/2.4"], ""),
    (COUNTER, &["T = 235.2*1.2/2.4"], "load-place"),
    (WALKWAY, &["T = 842.8*1.5/(1.8*sin 65)"], "load-place"),
    (CRATES, &["T = (Wb*1.2+W1*2.4+W2*0.4)/0.8"], "distance-origin"),
    (COUNTER, &["T = (Wb*1.2+W1*1.3)/2.5"], ""),
    (TIP, &["Hy = 816+164"], ""),
    // Two signs and another ratio beside.
    (MAST, &["T = (Wb*2.6 sin 40-W1*4.4 sin 25)/(5.2 sin 65)"], ""),
];

#[test]
fn a_form_that_is_literally_a_thoughts_proves_it() {
    let mut others = Vec::new();
    for (code, lines, wanted) in PROVED {
        let (sign, told) = thoughts(code, lines);
        let first = told.first();
        let as_wanted = first.is_some_and(|(id, _, flat)| id == wanted && *flat);
        if sign != Sign::Wrong || !as_wanted {
            others.push(format!("{code} {lines:?}: {sign:?} {told:?}"));
        }
    }
    assert!(others.is_empty(), "{others:#?}");
}

#[test]
fn a_form_that_only_comes_to_the_same_proves_nothing() {
    let mut others = Vec::new();
    for (code, lines, family) in UNPROVED {
        let (sign, told) = thoughts(code, lines);
        let flat = told.iter().any(|(_, _, flat)| *flat);
        let first = told.first().map_or("", |(_, family, _)| *family);
        if sign != Sign::Wrong || flat || !family.is_empty() && first != *family {
            others.push(format!("{code} {lines:?}: {sign:?} {told:?}"));
        }
    }
    assert!(others.is_empty(), "{others:#?}");
}

/// What is said of the last of these lines, each with its family and whether it is told flatly.
fn thoughts(code: &str, lines: &[&str]) -> (Sign, Vec<(String, &'static str, bool)>) {
    let session: Session = drawn(code);
    let lines: Vec<String> = lines.iter().map(ToString::to_string).collect();
    let found = session.thoughts_in(&lines).pop().unwrap();
    let told = found.thoughts.into_iter();
    let told = told.map(|one| (one.id, one.family.unwrap_or_default(), one.flat));
    (found.sign, told.collect())
}
