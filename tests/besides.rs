//! Words in a line: those that carry nothing, corrections, names told in words, comparisons, a
//! direction in a sentence, and words alone. What would be wrong without its words never turns right.

use crate::general::opened;
use leverwright::lesson::parse_problem;
use leverwright::session::Session;
use leverwright::text::Words;

/// The mast of `lines.rs`: Wb = 411.6 N, W1 = 705.6 N, T = 385.0 N, Hx = −348.9 N, Hy = 954.5 N,
/// ψ = 69.9°; the rope's arm is 6.2 m·sin 80° = 6.106 m.
const MAST: &str = include_str!("lines/mast.json");

/// Lines at the mast's first weight, and the truth of the last one, perhaps with `:` and what is
/// said.
type Row = (&'static [&'static str], &'static str);

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // Words before a formula.
    (&["so the mast weighs Wb = 42*9.8 = 411.6 N"], "holds"), (&["and the dummy W1 = 72*9.8 = 705.6 N"], "holds"),
    (&["likewise W1 = 705.6 N"], "holds"), (&["sorry, W1 = 705.6 N"], "holds"), (&["no, W1 = 705.6 N"], "holds"),
    (&["so the mast weighs Wb = 42*9.8 = 511.6 N"], "wrong"), (&["likewise W1 = 411.6 N"], "noted:weight of the mast"),
    (&["and the dummy Wb = 411.6 N"], "not-understood"), (&["half of Wb = 411.6 N"], "not-understood"), (&["the mass Wb = 411.6 N"], "wrong"),
    (&["not Wb = 411.6 N"], "not-understood"), (&["it is not so that Wb = 411.6 N"], "not-understood"), (&["the moment of Wb = 411.6 N"], "not-understood"),
    (&["Q Wb = 411.6 N"], "not-understood"), (&["xy Wb = 411.6 N"], "not-understood"),
    // Words behind one.
    (&["Wb = 411.6 N, all the weight"], "holds"), (&["Wb = 411.6 N for the whole mast"], "holds"), (&["T = 385 N // tension"], "holds"),
    (&["⇒ T = 385 N (3 s.f.)"], "holds"), (&["T = 385 N to 3 sf"], "holds"), (&["T = 385 N (2 d.p.)"], "holds"),
    (&["Wb = 511.6 N, all the weight"], "wrong"), (&["T = 395 N // tension"], "wrong"), (&["T = 395 N (3 s.f.)"], "wrong"),
    (&["Wb = 411.6 N, half the weight"], "not-understood"), (&["Wb = 411.6 N, not the weight"], "not-understood"), (&["Wb = 411.6 N, the rope pulls up"], "not-understood"),
    (&["T = 385 joules"], "not-understood"), (&["T = 385 xyz"], "not-understood"), (&["ψ = 69.9° above the mast"], "not-understood"),
    (&["411.6 N for the mast"], "holds"), (&["411.6 N for the dummy"], "not-understood"), (&["T = 385 N, the weight of the mast"], "not-understood"),
    // A conclusion on the way stands for the sign; a reason is not judged.
    (&["Hx = -349 N so it points left"], "holds"), (&["Hx = -349 N, so to the left"], "holds"), (&["Hx = -349 N so it points right"], "wrong:not the way"),
    (&["Hx = 0 because the ground is level"], "wrong"),
    // A correction: the last value counts.
    (&["Wb = 421 no 411.6 N"], "holds"), (&["Wb = 421 N, sorry 411.6 N"], "holds"), (&["T = 339 I mean 385 N"], "holds"),
    (&["Wb = 411.6 no 421 N"], "wrong"), (&["T = 385 no 339 N"], "wrong"),
    // Brackets, dots, a raised point.
    (&["Wb = 42*(9.8))"], "holds"), (&["Wb = 43*(9.8))"], "wrong"), (&["Wb = 42 × 9·8 = 411.6 N"], "holds"), (&["Wb = 42 × 9·9 = 411.6 N"], "wrong"),
    (&["↑: Hy = 411.6 + 705.6 - 385 sin 25"], "holds"), (&["↑ Hy = 411.6 + 705.6 - 385 sin 25"], "holds"), (&["↑ Hy = 411.6 + 705.6 + 385 sin 25"], "wrong"),
    (&["M(hinge): 236.1*3.1 + 404.7*4 = T*6.106"], "holds"), (&["M(hinge): 236.1*3.1 + 404.7*4 = T*6.2"], "wrong"),
    // Own names: two in a line, and with what they are.
    (&["p = 6.2 sin 80 = 6.106 m, arm of the rope"], "noted"), (&["p = 6.2 sin 80 = 6.106 m, arm of the rope", "236.1*3.1 + 404.7*4 = T p"], "holds"),
    (&["p = 6.2 sin 80 = 6.106 m, q = 3.1 sin 35 = 1.778 m", "411.6 q + 404.7*4 = T p"], "holds"),
    (&["p = 6.2 sin 80 = 6.106 m, q = 3.1 sin 35 = 1.778 m", "411.6 p + 404.7*4 = T q"], "wrong"),
    (&["p = 6.2 sin 80 = 6.106 m, q = 3.1 sin 35 = 1.778 m (arms)", "411.6 q + 404.7*4 = T p"], "holds"),
    (&["p = 6.2 sin 80 = 6.106 m, the arm of W_b", "236.1*3.1 + 404.7*4 = T p"], "holds"),
    // Names told in words.
    (&["R is the tension of the rope"], "noted:R stands for T"), (&["let R be the pull of the rope", "R = 385 N"], "holds"), (&["Let R = tension of the rope", "R = 395 N"], "wrong"),
    (&["Q is the push of the wind"], "noted:as words"), (&["Q is the push of the wind", "Q + 3 = T"], "noted:not known here"),
    (&["Q is the push of the wind", "Q + 3 = T", "Q + 4 = T"], "noted:Noted"), (&["Q is the push of the wind", "Q = 5 N", "Wb = 411.6 N"], "holds"),
    (&["let A be the hinge, B the tip", "W1 = 705.6 N"], "holds"), (&["let T be the weight of the mast", "T = 411.6 N"], "noted"),
    (&["let N be the push of the wall", "Wb = 411.6 N"], "holds"), (&["x is the push of the wind", "Wb = 42 x 9.8"], "holds"), (&["D is the push of the wind", "Wb = 411.6 N, D = 3 N"], "holds"),
    // Comparisons.
    (&["T < Wb + W1"], "noted:This holds"), (&["T > Wb + W1"], "wrong"), (&["W1 is larger than Wb"], "noted:This holds"), (&["Wb is larger than W1"], "wrong"), (&["W1 is less than Wb"], "wrong"),
    // A direction in a sentence.
    (&["H points at 110.1° from the x axis"], "holds"), (&["H points at 69.9° from the x axis"], "wrong"), (&["angle = 180° − 69.9° = 110.1° from the x axis"], "holds"),
    // Words alone.
    (&["the rope is tight and has no weight"], "noted:as words"), (&["g cancels"], "noted:as words"), (&["Wb cos"], "not-understood"), (&["qwertz"], "not-understood"),
];

/// A board, lines, and the truth of the last one.
#[rustfmt::skip]
const BOARDS: &[(&str, &[&str], &str)] = &[
    ("ladder", &["R is the push of the floor", "R = 882 N"], "holds"), ("ladder", &["R is the push of the floor", "R = 892 N"], "wrong"),
    ("ladder", &["N = 828 no 882 N"], "holds"), ("ladder", &["x = level distance from the foot to the climber", "686 x = 5"], "noted:not known here"),
    ("ladder_mu", &["G = weight of the ladder", "about the foot: G (L/2) cos θ = F L sin θ"], "holds"), ("ladder_mu", &["G = weight of the ladder", "about the foot: G (L/2) sin θ = F L sin θ"], "wrong"),
    ("a_frame", &["the pin's force is 24.5° from the vertical"], "holds"), ("a_frame", &["J points 65.5° from the vertical"], "wrong"),
    ("pulley_beam", &["ψ = 57.7° from the vertical"], "holds"), ("pulley_beam", &["ψ = 32.2° from the vertical"], "wrong"), ("pulley_beam", &["ψ = 32.2°"], "holds"),
    ("sign", &["T2 is larger than T1"], "wrong"), ("sign", &["T₂ = m₁g cos α / sin(α + β)"], "holds"), ("sign", &["T₂ = m₁g cos α / sin(α − β)"], "wrong"),
    ("jib", &["let y = 1.5 m be the depth of the strut's foot below the pin"], "noted"), ("jib", &["W_b = 40 × 9·8 = 392 N"], "holds"),
];

/// What is wrong with the answer to the last of these lines.
fn fault(session: &mut Session, lines: &[&str], wanted: &str) -> Option<String> {
    let turns: Vec<_> = lines.iter().map(|line| session.submit(line)).collect();
    let last = turns.last().unwrap();
    let (truth, said) = wanted.split_once(':').unwrap_or((wanted, ""));
    let message = last.line.message.to_string();
    let fits = last.kept.truth == truth && message.contains(said);
    (!fits).then(|| format!("{lines:?}: {} {message}; wanted {wanted}", last.kept.truth))
}

#[test]
fn verif_words_beside_a_formula_change_no_truth() {
    let at_mast = ROWS.iter().filter_map(|(lines, wanted)| {
        let problem = parse_problem(MAST).unwrap();
        let mut session = Session::start(problem, None, Words::english()).unwrap();
        session.submit("skip");
        session.submit("skip");
        fault(&mut session, lines, wanted)
    });
    let at_boards = BOARDS
        .iter()
        .filter_map(|(board, lines, wanted)| fault(&mut opened(board), lines, wanted));
    let faults: Vec<String> = at_mast.chain(at_boards).collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// The reading shows the value that counts.
#[test]
fn a_correction_is_read_as_its_last_value() {
    let mut session = opened("ladder");
    let turn = session.submit("N = 828 no 882 N");
    assert_eq!(turn.line.reading.as_deref(), Some("N = 882 N"));
}
