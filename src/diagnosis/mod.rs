//! Naming the thought behind a line that does not hold.
//!
//! The evidence of the judge is compared with the keys of every mistake that can be made in this
//! problem. Mistakes that agree as functions at a step are one family there: no value can split
//! them. Two voices: *flat* only where the typed form (its lifted function), a typed unit or a
//! broken sum proves the thought; *perhaps* where only a value fits. "None of these" is a
//! hypothesis with a weight of its own, so that a nonsense number is not explained at any price.

mod another;
mod by_form;
mod coarse;
mod form;
mod leaning;
mod literal;
mod one_sided;
mod pair;
mod probe;
mod rope_place;
mod second;
mod several;
mod slip;
mod term_by_term;
mod value;
mod world;

use by_form::{by_form, by_terms};
pub use coarse::rounded_on_the_way;
pub use leaning::Leaning;
pub use probe::{Probe, probe};

use crate::judge::{Board, Judgement, Memo, Truth};
use crate::key::{Key, Part, Samples, StepId, agree};
use crate::mistakes::{Instance, MASS_OF_ANOTHER};
use world::{World, is_settled, told_unknown};

/// The share of the weight that a family must have before it is said with "perhaps".
const PERHAPS_SHARE: f64 = 0.5;

/// How surely a mistake is named.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Voice {
    /// The typed form proves it.
    Flat,
    /// Only a value fits.
    Perhaps,
}

/// What speaks for a mistake.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Because {
    /// The typed expression is the mistake's formula.
    Form,
    /// A unit that was typed.
    Unit,
    /// The form is right, and the number after the sign is what the mistake gives.
    Sum,
    /// The number is what the mistake gives.
    Value,
}

/// A mistake that explains the line.
#[derive(Clone, Debug, PartialEq)]
pub struct Named {
    /// Its place in the list of instances handed in.
    pub instance: usize,
    /// Other instances that agree with it here and cannot be told from it.
    pub alike: Vec<usize>,
    /// How surely.
    pub voice: Voice,
    /// What speaks for it.
    pub because: Because,
    /// Its share of the weight among everything that was considered, "none of these" included.
    pub share: f64,
    /// The working of a learner who makes it beside the wrong relations that she goes on with, or
    /// beside another mistake in the same line, where it explains the line only so.
    pub beside: Option<Box<Key>>,
}

impl Named {
    /// The working that the line is right in.
    pub fn key<'k>(&'k self, instances: &'k [Instance]) -> &'k Key {
        self.beside
            .as_deref()
            .unwrap_or(&instances[self.instance].key)
    }
}

/// What beside mistakes may explain a number, each with its share of the weight.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Beside {
    /// A slip of the pen.
    pub pen: f64,
    /// Numbers on the way that were rounded to two figures.
    pub coarse: f64,
    /// g = 10 m/s² on the way.
    pub ten: f64,
    /// Another quantity of the working than the one asked.
    pub another: Option<(StepId, f64)>,
}

impl Beside {
    /// The largest share of a slip of the pen, hard rounding and another g.
    pub fn most(&self) -> f64 {
        self.pen.max(self.coarse).max(self.ten)
    }
}

/// The mistakes that explain a line, most likely first.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Diagnosis {
    /// At most three families.
    pub named: Vec<Named>,
    /// True if the form is right and only the sum is not.
    pub slip: bool,
    /// True if a slip of the pen explains the number better than any mistake: digits exchanged,
    /// one digit off, a power of ten.
    pub pen_slip: bool,
    /// True if numbers on the way that were rounded to two figures explain the number better than
    /// any mistake.
    pub coarse: bool,
    /// True if g = 10 m/s² on the way explains the number better than any mistake.
    pub ten: bool,
    /// The other quantity of the working whose value the number is, where that explains it better than
    /// any mistake.
    pub another: Option<StepId>,
    /// The shares of the weight that these have.
    pub beside: Beside,
    /// True for a line that sets the component of the unknown equal to the unknown itself.
    pub component_for_pull: bool,
    /// True where the form is that of two mistakes made together: the two that are named.
    pub together: bool,
    /// The part of the hinge's force of which a balance with the unknown in it was explained.
    pub of_part: Option<StepId>,
}

impl Diagnosis {
    /// The mistake to speak about, if one is likely enough.
    pub fn spoken(&self) -> Option<&Named> {
        let slips = self.pen_slip || self.coarse || self.ten || self.another.is_some();
        self.named
            .first()
            .filter(|named| named.voice == Voice::Flat || named.share >= PERHAPS_SHARE && !slips)
    }

    /// True if the mistake to speak about is shown by the form of the line, by itself.
    pub fn is_by_form(&self) -> bool {
        let of_form = |named: &Named| named.because == Because::Form && !self.together;
        self.spoken().is_some_and(of_form)
    }
}

/// Explains a judged line that does not hold, of a learner of whom nothing is known.
pub fn diagnose(board: &Board<'_>, judgement: &Judgement, instances: &[Instance]) -> Diagnosis {
    diagnose_of(board, judgement, instances, &Leaning::default())
}

/// Explains a judged line that does not hold, of a learner with these mistakes behind her. A balance
/// of forces that shows nothing by itself is looked at once more as what it says of the hinge's force.
pub fn diagnose_of(
    board: &Board<'_>,
    judgement: &Judgement,
    instances: &[Instance],
    leaning: &Leaning,
) -> Diagnosis {
    let beside = board.with_unknown_right();
    let with = |standing| Board {
        standing,
        memo: Memo::default(),
        ..*board
    };
    // What was told wrongly before, and is told once more, follows from itself.
    if is_told_again(board, judgement) {
        let target = judgement.target;
        let mut standing = board.standing.clone();
        standing.remove(&target);
        let before = board.carried.iter().filter(|(step, _)| *step != target);
        let carried: Vec<(StepId, Key)> = before.cloned().collect();
        let first = Board {
            carried: &carried,
            ..with(&standing)
        };
        return diagnose_of(&first, judgement, instances, leaning);
    }
    // What was done in the moment sum shows in no form of the hinge's force: there the pull counts as
    // it is. A number alone may come from anything.
    let last = matches!(judgement.target, StepId::Reaction(..)) && !judgement.evidence.alone;
    let open = |id: &StepId| !board.standing.contains_key(id);
    if let Some((_, standing)) = beside.as_ref().filter(|(id, _)| last && open(id)) {
        let mut standing = standing.clone();
        if matches!(
            judgement.target,
            StepId::Reaction(_, Part::Size | Part::Direction)
        ) {
            board.add_right_parts(&mut standing);
        }
        return explain(&with(&standing), judgement, instances, leaning);
    }
    let alone = explain(board, judgement, instances, leaning);
    let unnamed = alone.named.is_empty() && !alone.slip;
    let by_part = judgement.evidence.by_part.as_ref().filter(|_| unnamed);
    let Some((by_part, (_, standing))) = by_part.zip(beside.as_ref()) else {
        return alone;
    };
    let mut of_part = judgement.clone();
    of_part.target = by_part.part;
    of_part.evidence.lifted.clone_from(&by_part.lifted);
    of_part.evidence.terms.clone_from(&by_part.terms);
    let told = explain(&with(standing), &of_part, instances, leaning);
    match told.is_by_form() {
        true => Diagnosis {
            of_part: Some(by_part.part),
            ..told
        },
        false => alone,
    }
}

/// True for a line that does not hold and has the form of a wrong value or relation that stands.
fn is_told_again(board: &Board<'_>, judgement: &Judgement) -> bool {
    let (target, evidence) = (judgement.target, &judgement.evidence);
    let carried = board.carried.iter().any(|(step, _)| *step == target);
    let wrong = board.standing.get(&target).is_some_and(|own| !own.right);
    let form = !evidence.alone && !evidence.broken_link;
    let is_hers = |(function, _): &(Samples, Vec<usize>)| {
        let mut lifted = evidence.lifted.iter();
        lifted.any(|one| same(target, one, function))
    };
    judgement.truth == Truth::DoesNotHold
        && form
        && (carried || wrong)
        && board.accepted(target).iter().skip(1).any(is_hers)
}

/// Explains a judged line as what it was held against.
fn explain(
    board: &Board<'_>,
    judgement: &Judgement,
    instances: &[Instance],
    leaning: &Leaning,
) -> Diagnosis {
    let mut diagnosis = explain_exchanged(board, judgement, instances, leaning);
    one_sided::told_of_one(judgement.target, instances, &mut diagnosis.named);
    diagnosis
}

/// The same, with two masses exchanged where only one of them is seen.
fn explain_exchanged(
    board: &Board<'_>,
    judgement: &Judgement,
    instances: &[Instance],
    leaning: &Leaning,
) -> Diagnosis {
    let mut diagnosis = Diagnosis::default();
    let fault = matches!(
        judgement.truth,
        Truth::DoesNotHold
            | Truth::WrongUnit { .. }
            | Truth::TooFewFigures
            | Truth::OtherAngle
            | Truth::Mismatched(_)
    );
    if !fault {
        return diagnosis;
    }
    // Of a pull that stands a line says no more how it was found.
    let found = Some(judgement.target) == board.unknown()
        && board
            .standing
            .get(&judgement.target)
            .is_some_and(|own| own.right);
    if found && judgement.truth == Truth::DoesNotHold {
        return diagnosis;
    }
    if form::takes_component_for_pull(board, judgement) {
        diagnosis.component_for_pull = true;
        return diagnosis;
    }
    let accepted = board.accepted(judgement.target);
    let hers = second::key_in_force(board, judgement.target);
    let told = told_unknown(board, judgement);
    let mut worlds: Vec<World> = instances
        .iter()
        .map(|instance| {
            World::of(
                board,
                (judgement.target, &accepted),
                (hers.as_ref(), &told),
                instance,
            )
        })
        .collect();
    for (world, instance) in worlds.iter_mut().zip(instances) {
        if one_sided::is_one_sided(board, judgement.target, instance)
            || form::cancels_an_arm(board, judgement, instance)
        {
            *world = World::default();
        }
    }
    // Another weight than the one asked is that, unless it is told by the name of the one asked.
    let weight = matches!(judgement.target, StepId::Weight(_));
    if weight && judgement.evidence.other_step.is_some() && !is_told_by_name(board, judgement) {
        for (world, instance) in worlds.iter_mut().zip(instances) {
            if instance.mistake.family == MASS_OF_ANOTHER {
                *world = World::default();
            }
        }
    }
    if let Some(named) = by_unit(judgement, instances, &worlds) {
        diagnosis.named = vec![named];
        return diagnosis;
    }
    if let Some(named) = by_form(board, judgement, instances, &worlds) {
        diagnosis.named = named;
        return diagnosis;
    }
    if let Some(named) = rope_place::by_rope_place(board, judgement, instances) {
        diagnosis.named = vec![named];
        return diagnosis;
    }
    if let Some(named) = pair::by_pair(board, judgement, instances, (&worlds, &accepted)) {
        diagnosis.named = named.into();
        diagnosis.together = true;
        return diagnosis;
    }
    if let Some(named) = by_terms(board, judgement, instances, &worlds) {
        diagnosis.named = vec![named];
        return diagnosis;
    }
    diagnosis.slip = judgement.evidence.broken_link;
    // The root of an equation speaks less than its form, which no mistake explains.
    let part = matches!(judgement.target, StepId::Reaction(_, Part::Along(_)));
    let set_up = judgement.target == StepId::MomentSum || part && judgement.evidence.equation;
    let equation = set_up && !judgement.evidence.broken_link;
    // Names alone are another function, whatever they give here.
    // A sum of angles shows itself which angles stand in it.
    let shown = judgement.evidence.names_only || judgement.evidence.angle_sum.is_some();
    if !equation && !shown {
        let known = (instances, leaning);
        value::explain(board, judgement, known, &worlds, &mut diagnosis);
    }
    diagnosis
}

/// True for a line that begins with the name of what it is held against.
fn is_told_by_name(board: &Board<'_>, judgement: &Judgement) -> bool {
    let symbol = board
        .key
        .step(judgement.target)
        .map(|step| step.symbol.shown());
    let layout = judgement.layout.as_deref().unwrap_or_default();
    let before = layout.split_once('=').map(|(name, _)| name.trim());
    before.is_some() && before == symbol.as_deref()
}

/// A calculator in radians, where they were typed: the value shows it, whatever else stands in
/// the line.
fn by_unit(judgement: &Judgement, instances: &[Instance], worlds: &[World]) -> Option<Named> {
    let values = judgement.evidence.lifted.iter().map(|function| function[0]);
    let values: Vec<f64> = values.filter(|_| judgement.evidence.radians).collect();
    let gives = |world: &World| {
        let near = |value: f64, typed: &f64| (value - typed).abs() <= 0.002 * value.abs();
        world
            .functions()
            .any(|function| values.iter().any(|typed| near(function[0], typed)))
    };
    let calculator = |instance: &Instance| instance.mistake.family == value::CALCULATOR;
    let instance = (0..instances.len())
        .find(|index| calculator(&instances[*index]) && gives(&worlds[*index]))?;
    Some(Named {
        instance,
        alike: Vec::new(),
        voice: Voice::Flat,
        because: Because::Unit,
        share: 1.0,
        beside: None,
    })
}

/// True if two functions are the same; an angle, a direction, and a part of a support's force, may be told with
/// either sign.
fn same(target: StepId, one: &Samples, other: &Samples) -> bool {
    let direction = matches!(target, StepId::Reaction(_, Part::Direction));
    let signed = direction || matches!(target, StepId::Angle(_)) || target.has_free_sense();
    agree(one, other) || signed && agree(&one.map(|value| -value), other)
}
