//! Judging a line: what holds, what it establishes, and the evidence.
//!
//! Here the learner's line and the key meet for the first time. A verdict has two axes, truth and
//! progress. The judge compares and yields evidence; naming a mistake is `diagnosis`, speaking is
//! `hint`.
//!
//! The order of judging: several readings, of which the first that holds is taken; each `=`
//! against its own typed operands; the line lifted and compared as a function; then as a value,
//! with rounding reasoned about; the learner's own earlier values beside the right ones.

mod again;
mod angles;
mod aside;
mod beside_parts;
mod board;
mod by_balance;
mod by_terms;
mod by_wrong;
mod carried;
mod chain;
mod claim;
mod clauses;
mod counted;
mod equation;
mod evidence;
mod expression;
mod followed;
mod friction;
mod grade;
mod gravity;
mod grouped;
mod identity;
mod implied;
mod joint;
mod known_truth;
mod lacking;
mod lift;
mod links;
mod mended;
mod misread;
mod moment_sum;
mod multiplied;
mod names;
mod near;
mod open;
mod other;
mod other_units;
mod otherwise;
mod own;
mod points;
mod prefix;
mod printed_units;
mod ratio;
mod room;
mod root;
mod rounded_hard;
mod sense;
mod set_equal;
mod shape;
mod small_lengths;
mod solved_for;
mod standing;
pub mod statement;
mod stock;
mod stock_general;
mod superseded;
mod surplus;
mod terms;
mod told;
mod typed_angles;
mod unit_behind;
mod unproved;
mod value_behind;
mod worked;
mod written;

pub use angles::{AngleSum, WrongAngle};
pub use aside::Aside;
pub use board::{Board, Effort, Memo, Own, OwnName, Standing};
pub use by_balance::by_part;
pub use by_wrong::{is_true_of_typed, types_wrong, types_wrong_as_part, wrong_named};
pub(crate) use clauses::statements;
pub use evidence::{ByPart, Evidence};
pub(crate) use followed::{follows_own, functions_of_own, nearest_inputs, pins_of_own};
pub use grade::{Grade, Typed, grade};
pub use known_truth::{
    KnownTruth, WrongSum, known_truth, links_hold, unit_of_another_kind, worked_out_wrongly,
};
pub use lacking::Lacking;
use moment_sum::{at_moment_sum, value_of_name};
pub use names::{NameRole, Names};
use names::{lone_name, names_step, other_reading};
pub use other::is_part_along;
pub use own::{follows_relation, is_of_a_kind, own_of_wrong, restates, says_as_own, solves_own};
pub use superseded::superseded;
pub use terms::{Factor, Shape, Terms};
pub use typed_angles::{Ratio, TypedRatio};
pub use written::{WrittenFactor, WrittenTerm};

use crate::key::{Axis, StepId};
use crate::reading::{Mismatch, Misreading, Reading, Tree};
use crate::text::Span;
use crate::units::Dimension;
use stock::Stock;

/// Whether a line holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Truth {
    /// It holds.
    Holds,
    /// It holds, rounded on the way.
    HoldsRounded,
    /// It follows from these earlier lines of the learner's own.
    Follows(Vec<usize>),
    /// The right value with too few figures.
    TooFewFigures,
    /// The right number with a unit of another kind.
    WrongUnit {
        /// The dimension asked.
        wanted: Dimension,
        /// The dimension typed.
        found: Dimension,
    },
    /// A number of the problem or a value known, said again or noted for later.
    Noted,
    /// An angle of the drawing, but not the one asked: judged only through its use.
    OtherAngle,
    /// The quantity asked, told by its own name.
    Circular,
    /// It does not hold.
    DoesNotHold,
    /// It could not be read.
    NotUnderstood(Misreading),
    /// It was read, but its parts do not fit together.
    Mismatched(Mismatch),
}

impl Truth {
    /// True if the line may stand as an answer.
    pub fn holds(&self) -> bool {
        matches!(self, Truth::Holds | Truth::HoldsRounded | Truth::Follows(_))
    }
}

/// A remark that is no fault.
#[derive(Clone, Debug, PartialEq)]
pub enum Remark {
    /// A bare number where a unit belongs.
    UnitMissing,
    /// A bare number in the multiple of the unit in which the problem prints its forces.
    PrintedUnit(&'static str),
    /// Fewer figures than asked; the value in full is kept.
    FewFigures,
    /// A number of fewer figures than asked, which is kept as it was typed.
    FewFiguresTyped,
    /// Another accepted acceleration of free fall was used, in m/s².
    OtherGravity(f64),
    /// A hinge part given in the sense opposite to the key's axis: its size is right.
    OppositeSense,
    /// A hinge part with a minus sign and the negative way: one may turn the other about.
    SignAndWay,
    /// The angle told with a force is that with the horizontal, which leaves its way open.
    WayOpen,
    /// The way that was told is that on this one of the two bodies that it acts between.
    OnBody(usize),
    /// The way told with a size is that of one part; another lies along this axis.
    OtherPart(Axis),
    /// The line was read in another way than the likeliest.
    OtherReading,
    /// N behind a number was read as the force of that name.
    NotNewtons,
    /// It rests on something that is not found yet: true, but no value of the learner's.
    RestsOnOpen,
    /// An expression without `=` was taken as a sum of moments that vanishes.
    TakenAsZero,
    /// A weight or component given with a minus sign: its size is right.
    SignInSum,
    /// The value is right, and the form does not show how it comes about.
    NotSeen,
    /// Beside [`Remark::NotSeen`]: every number is one of this working, and may be several.
    AllKnown,
    /// The value asked, said to be this other quantity.
    OtherName(StepId),
    /// Names alone that are equal with the numbers of this problem, and not with others.
    HoldsHere,
    /// The value is near, every number is known, and the form is another relation.
    ByChance,
    /// True whatever the forces are.
    SaysNothing,
    /// True of numbers, whatever they are of.
    OfNumbers,
    /// A wrong value of hers from this line, which she goes on with, told once more.
    OwnAgain(usize),
    /// A balance that says no more than those that stand; the one that says it.
    SaidAlready(StepId),
    /// A number where the unknown must stay a letter.
    LeaveLetter,
    /// A pull that comes out negative from the learner's own working.
    NegativePull,
    /// An equation that holds, with these other unknowns in it.
    OtherUnknowns(Vec<StepId>),
    /// An equation that holds with these parts counted so; true for one against the axes.
    SensesTaken(Vec<(StepId, bool)>),
}

/// What was found out about a line.
#[derive(Clone, Debug, PartialEq)]
pub struct Judgement {
    /// The step that the line speaks about.
    pub target: StepId,
    /// Whether it holds.
    pub truth: Truth,
    /// True if the form proves it, not only the value.
    pub proved: bool,
    /// Values that stand after this line: of the step itself and of others it settles.
    pub values: Vec<(StepId, Own)>,
    /// Steps that it establishes.
    pub establishes: Vec<StepId>,
    /// A name of the learner's own, and what it stands for.
    pub names: Option<(String, OwnName)>,
    /// Such names that statements before the last one of the line define.
    pub names_before: Vec<(String, OwnName)>,
    /// The value of the line, in SI units.
    pub value: Option<f64>,
    /// Remarks that are no faults.
    pub remarks: Vec<Remark>,
    /// What speaks about it.
    pub evidence: Evidence,
    /// Where something is wrong.
    pub caret: Option<Span>,
    /// How the line was read.
    pub layout: Option<String>,
}

impl Judgement {
    /// True for a line that holds, as an answer or beside the question.
    pub fn stands(&self) -> bool {
        let noted = self.truth == Truth::Noted && self.proved;
        self.truth.holds() || noted || self.evidence.aside == Some(Aside::True)
    }

    /// True, and not what is asked.
    pub fn noted_true(asked: StepId) -> Judgement {
        Judgement {
            proved: true,
            ..Judgement::of(asked, Truth::Noted)
        }
    }

    /// A judgement with nothing in it yet.
    fn of(target: StepId, truth: Truth) -> Judgement {
        Judgement {
            target,
            truth,
            proved: false,
            values: Vec::new(),
            establishes: Vec::new(),
            names: None,
            names_before: Vec::new(),
            value: None,
            remarks: Vec::new(),
            evidence: Evidence::default(),
            caret: None,
            layout: None,
        }
    }
}

/// Judges a line that answers `asked`; `number` is the number the line will have.
pub fn judge(board: &Board<'_>, asked: StepId, line: &str, number: usize) -> Judgement {
    clauses::judge(board, asked, line, number)
        .unwrap_or_else(|| judge_line(board, asked, line, number))
}

/// Judges a line of one statement.
fn judge_line(board: &Board<'_>, asked: StepId, line: &str, number: usize) -> Judgement {
    // A balance is asked for its unknown, though that was told before it.
    let told = board.unknown().filter(|_| asked == StepId::MomentSum);
    let mut standing = board.standing.clone();
    if told.is_none_or(|unknown| standing.remove(&unknown).is_none()) {
        return judge_as_told(board, asked, line, number);
    }
    let open = Board {
        standing: &standing,
        memo: Memo::default(),
        ..*board
    };
    let found = judge_as_told(&open, asked, line, number);
    if found.truth.holds() {
        return found;
    }
    let with_value = judge_as_told(board, asked, line, number);
    match with_value.truth.holds() {
        true => with_value,
        false => found,
    }
}

/// Judges a line of one statement beside all that stands.
fn judge_as_told(board: &Board<'_>, asked: StepId, line: &str, number: usize) -> Judgement {
    let readings = match crate::reading::read(line, board.names.vocabulary()) {
        Ok(readings) => small_lengths::metres_first(board, readings),
        Err(misreading) => {
            let span = misreading.span;
            let mut judgement = Judgement::of(asked, Truth::NotUnderstood(misreading));
            judgement.caret = Some(span);
            return judgement;
        }
    };
    let at = (line, number);
    let in_her_sense = |with: &Board<'_>| printed_units::judge_readings(with, asked, &readings, at);
    let first = mended::in_either_way(board, in_her_sense(board), &in_her_sense);
    if first.stands() {
        return sense::unless_turned(board, &readings, first, &in_her_sense);
    }
    sense::in_own_senses(board, asked, &readings, &in_her_sense).unwrap_or(first)
}

/// Judges a line by the reading of it that holds, or by the one that says most.
fn judge_readings(
    board: &Board<'_>,
    asked: StepId,
    readings: &[Reading],
    at: (&str, usize),
) -> Judgement {
    let stock = Stock::of(board);
    let mut first: Option<Judgement> = None;
    // What is true beside the question in another reading.
    let mut noted: Option<Judgement> = None;
    for (index, reading) in readings.iter().enumerate() {
        let mut judgement = judge_reading(board, &stock, asked, reading, at);
        points::compare_way(board, reading, &mut judgement);
        prefix::compare_prefix(board, reading, &mut judgement);
        evidence::see(board, &stock, reading, &mut judgement);
        own::tell_lines(board, reading, &mut judgement);
        judgement.layout = Some(own::layout(board, reading, &judgement));
        // A sine that only comes right when it is read otherwise must be proved.
        let reread = index > 0 && !judgement.proved && angles::has_ratio(reading);
        if judgement.truth.holds() && reread {
            continue;
        }
        if judgement.truth.holds() {
            if index > 0 {
                (judgement.remarks).push(other_reading(board, &readings[0], reading));
            }
            return judgement;
        }
        let says = index > 0 && noted.is_none() && judgement.truth == Truth::Noted;
        if says
            && names::says_in_another_reading((&readings[0], reading), &judgement, first.as_ref())
        {
            noted = Some(judgement.clone());
        }
        // A reading whose parts fit says more than one whose parts do not.
        let better = match (&first, &judgement.truth) {
            (None, _) => true,
            (Some(known), Truth::Mismatched(_)) => matches!(known.truth, Truth::NotUnderstood(_)),
            (Some(known), _) => matches!(known.truth, Truth::Mismatched(_)),
        };
        if better {
            first = Some(judgement);
        }
    }
    let first = first.unwrap_or_else(|| Judgement::of(asked, Truth::DoesNotHold));
    let counted = readings.iter().find_map(|reading| {
        let mut judgement = other_units::judge(board, &stock, asked, reading, at, &first)
            .or_else(|| printed_units::judge(board, &stock, asked, reading, at, &first))
            .or_else(|| small_lengths::judge(board, &stock, asked, reading, at, &first))
            .or_else(|| otherwise::judge(board, &stock, asked, reading, at, &first))
            .or_else(|| unit_behind::judge(board, &stock, asked, reading, at, &first))?;
        points::compare_way(board, reading, &mut judgement);
        if !other_units::says_something(&judgement) {
            return None;
        }
        judgement.layout = Some(own::layout(board, reading, &judgement));
        Some(judgement)
    });
    let noted = noted.filter(|_| !first.stands());
    counted.or(noted).unwrap_or(first)
}

/// Judges a reading; where it tells a step by a ratio or by its square, it is noted which.
fn judge_reading(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    reading: &Reading,
    line: (&str, usize),
) -> Judgement {
    let at = (asked, line);
    if let Some(mut judgement) = value_behind::judge(board, stock, asked, reading, line) {
        value_behind::credit_names(board, stock, at, reading, &mut judgement);
        return judgement;
    }
    let mut judgement = judge_relation(board, stock, asked, reading, line);
    value_behind::credit_names(board, stock, at, reading, &mut judgement);
    let others = |remark: &Remark| matches!(remark, Remark::OtherUnknowns(_));
    if judgement.remarks.iter().any(others) && value_behind::breaks_apart(board, reading) {
        return value_behind::not_its_value(Judgement::of(asked, Truth::DoesNotHold));
    }
    let solved = solved_for::solved_for(board, reading);
    let told = solved
        .as_ref()
        .map(|(step, _)| *step)
        .or_else(|| names::step_alone(board, &reading.sides));
    judgement.evidence.rests_on = solved_for::steps_named(board, reading, told);
    sense::turn_with_unknown(board, &mut judgement);
    if judgement.truth == Truth::Noted && judgement.proved {
        judgement.evidence.tells = told;
    }
    match solved {
        Some(solved) => solved_for::judge_solved(board, stock, (asked, line), judgement, solved),
        None => judgement,
    }
}

/// Judges a reading; a relation between what is known, which is not what is asked, is noted where
/// it is true.
fn judge_relation(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    reading: &Reading,
    line: (&str, usize),
) -> Judgement {
    let shortened = chain::without_rounding(reading);
    let reading = shortened.as_ref().unwrap_or(reading);
    let turned = claim::value_last(board, reading);
    let reading = turned.as_ref().unwrap_or(reading);
    let mut judgement = judge_sides(board, stock, asked, reading, line);
    if let Some(broken) = links::broken_name(board, stock, asked, reading, &judgement) {
        return broken;
    }
    let wrong = matches!(
        judgement.truth,
        Truth::DoesNotHold | Truth::Mismatched(_) | Truth::Circular
    );
    let sides: Vec<&Tree> = reading.sides.iter().collect();
    if wrong && identity::is_true_relation(board, stock, &sides) {
        return Judgement::noted_true(asked);
    }
    if wrong && let Some(noted) = beside_parts::noted(board, asked, reading, line) {
        return noted;
    }
    if board.key.general.is_some() {
        return claim::of_known(board, stock, asked, &sides, judgement);
    }
    if !wrong || judgement.evidence.misread.is_some() || reading.defines.is_some() {
        return judgement;
    }
    if let Some(unequal) = set_equal::judge(board, stock, asked, &sides, &judgement) {
        return unequal;
    }
    let aside = aside::aside(board, stock, asked, &sides);
    if judgement.evidence.other_step.is_some() {
        judgement.evidence.aside = aside.filter(|aside| *aside == Aside::True);
        return judgement;
    }
    if aside == Some(Aside::Known) {
        return Judgement::noted_true(asked);
    }
    judgement.evidence.aside = aside;
    judgement
}

fn judge_sides(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    reading: &Reading,
    (text, line): (&str, usize),
) -> Judgement {
    let sides: Vec<&Tree> = reading.sides.iter().collect();
    if chain::says_nothing(&sides, asked.is_balance()) {
        let mut judgement = Judgement::of(asked, Truth::Noted);
        judgement.remarks.push(Remark::SaysNothing);
        return judgement;
    }
    if let Some(judgement) = friction::judge(board, stock, asked, &sides, line) {
        return judgement;
    }
    // `ΣM = … = 0`: a name before an equation only says what the sum is.
    let sum_of = sides.len() > 1 && equation::is_equation(board, asked, &sides);
    if let Some((name, _)) = reading.defines.as_ref().filter(|_| !sum_of) {
        if let Some(own) = own::multiple_of_unknown(board, stock, &sides) {
            // A name for what is asked is its answer too.
            let mut judgement = expression::judge(board, stock, asked, &sides, line, false);
            if asked.is_balance() || !judgement.truth.holds() {
                judgement = Judgement::of(asked, Truth::Noted);
            }
            judgement.names = Some((name.clone(), own));
            return judgement;
        }
        let mut judgement = value_of_name(board, stock, asked, &sides, line);
        // The name of another quantity claims nothing of this one.
        if other::is_name_of_another(board, name, asked) {
            judgement = Judgement::of(asked, Truth::Noted);
        }
        judgement.names = own::own_name(board, stock, name, &sides, &judgement);
        let weights = own::is_weights(board, stock, name, &sides);
        // `Mtot = M1 + M2` claims nothing of what is asked; `W = 42` may be meant for Wb.
        let claims = other::is_alike(board, name, asked, &sides);
        let open = judgement.evidence.lifted.is_empty() || weights || !claims;
        // `S = Hx + Hy`: of what is not found yet nothing is claimed either.
        let unknown = sides.first().filter(|_| !claims);
        let of_unknown = unknown.is_some_and(|side| equation::has_unknown(board, &[*side]));
        if !judgement.truth.holds() && (judgement.names.is_some() && open || of_unknown) {
            judgement.truth = Truth::Noted;
        }
        return judgement;
    }
    let lone = lone_name(board, &sides);
    if let Some(refused) = sense::negative_root(lone.as_ref()) {
        return refused;
    }
    match lone {
        // `Hy + Wb = Ty` is a balance, whatever name stands alone. In a general working so is any
        // line with another open unknown in it.
        Some((NameRole::Step(target), rest))
            if !matches!(target, StepId::Reaction(..)) && equation::has_reaction(board, &rest)
                || equation::has_open_beside(board, target, &rest)
                || equation::sets_multiple(board, target, &rest) =>
        {
            equation::judge(board, stock, asked, &sides, line)
        }
        Some((NameRole::Step(target), rest)) => {
            let mut judgement = open::judge_named(board, stock, (asked, target), &rest, line);
            other::credit(board, asked, &mut judgement, &rest);
            if let Some(meant) = other::meant_by(board, stock, (asked, target), &rest, &judgement) {
                let evidence = judgement.evidence;
                judgement = Judgement::of(meant, Truth::Noted);
                judgement.evidence.number = evidence.number;
                judgement.evidence.ended = evidence.ended;
                judgement.evidence.ways = evidence.ways;
                judgement.remarks.push(Remark::OtherName(target));
                return judgement;
            }
            if let Some(own) = own::taken_name(board, stock, (text, sides[0]), &rest, &judgement) {
                judgement = Judgement::of(asked, Truth::Noted);
                judgement.names = Some(own);
            }
            judgement
        }
        Some((NameRole::Given(_), rest)) if equation::has_open_beside(board, asked, &rest) => {
            equation::judge(board, stock, asked, &sides, line)
        }
        Some((NameRole::Given(given), rest)) => {
            let typed = text.get(sides[0].span.start..sides[0].span.end);
            told::of_other_kind(board, stock, (asked, given), (typed, line), &rest)
                .unwrap_or_else(|| told::told_again(board, asked, given, &rest))
        }
        Some((NameRole::Gravity, rest)) => {
            let typed = text.get(sides[0].span.start..sides[0].span.end);
            told::gravity_told(board, stock, asked, (typed, line), &rest)
        }
        Some((NameRole::Own(_), rest)) => {
            let name = text.get(sides[0].span.start..sides[0].span.end);
            own::told_anew(board, stock, asked, (name, &sides), &rest, line)
        }
        // `T sin 65 = 0.906 T`: a chain for the component, which only the unknown can tell.
        None if sides.len() > 1
            && open::is_of_open_unknown(board, asked)
            && sides
                .iter()
                .all(|side| equation::has_unknown(board, &[*side]))
            && !sides.iter().any(|side| names_step(board, asked, side))
            && !equation::has_open_beside(board, asked, &sides) =>
        {
            let chain = expression::judge(board, stock, asked, &sides, line, false);
            // Where it is no chain for what is asked it is an equation for what is open in it.
            match chain.truth.holds() || board.key.general.is_none() {
                true => chain,
                false => equation::judge(board, stock, asked, &sides, line),
            }
        }
        None if board.key.general.is_none()
            && let Some(judgement) = implied::judge(board, stock, asked, &sides, line) =>
        {
            judgement
        }
        None if sides.len() > 1 && equation::is_equation(board, asked, &sides) => {
            equation::judge(board, stock, asked, &sides, line)
        }
        None if sides.len() == 1 && asked.is_balance() && equation::has_unknown(board, &sides) => {
            let mut judgement = equation::judge(board, stock, asked, &sides, line);
            judgement.remarks.push(Remark::TakenAsZero);
            judgement
        }
        None if asked.is_balance() => at_moment_sum(board, stock, asked, &sides, line),
        None => {
            let mut judgement = expression::judge(board, stock, asked, &sides, line, false);
            other::credit(board, asked, &mut judgement, &sides);
            judgement
        }
    }
}
