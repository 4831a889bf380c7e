//! The next smallest help, in four stages: a question that makes one look; the place on the
//! diagram; the same step worked in a sister problem; the line itself.
//!
//! The first two speak about the mistake that was named, or about the kind of step where none
//! was. Where the whole way of working is wrong the sister problem comes second, and then the place:
//! a single place does not mend a method. Nothing before the last stage holds a number or a formula of this problem's answer.

mod general;

use crate::key::{
    Atom, Axis, Formula, Key, Nature, Part, Pins, Rule, Sampling, StepId, Teller, balance_names,
    balance_numbers, formula_names, formula_numbers,
};
use crate::mistakes::{Instance, WRONG_LEG};
use crate::problem::{Acting, ForceId, Place, Problem, Size};
use crate::text::{Prose, Slot, Words};
use crate::units::{Dimension, value_text};

/// A problem with its key, ready to be told.
pub struct Case<'a> {
    /// The problem.
    pub problem: &'a Problem,
    /// Its key.
    pub key: &'a Key,
    /// Its numbers.
    pub sampling: &'a Sampling,
    /// Values of the learner's own that stand in place of the key's, SI.
    pub own: Pins,
}

impl Case<'_> {
    /// The words before the line itself.
    fn line_said(&self, words: &Words) -> Prose {
        let key = match self.own.is_empty() {
            true => "hint.line",
            false => "hint.line-own",
        };
        words.say(key, &[])
    }

    /// Tells it with her own values in place of its own, and these steps by their names.
    fn teller<'a>(&'a self, named: &'a [StepId]) -> Teller<'a> {
        Teller {
            problem: self.problem,
            key: self.key,
            sample: self.sampling.own(),
            pins: &self.own,
            figures: self.problem.figures(),
            typed: false,
            named,
        }
    }
}

/// The number of stages.
pub const STAGES: u8 = 4;
/// A sister's step is worked only where its value lies farther than this share from the one asked.
const SISTER_APART: f64 = 0.03;

/// The hint of a stage, from 1 to [`STAGES`], for a step, with the mistake that was named in it
/// and the sister problem.
pub fn hint(
    words: &Words,
    case: &Case<'_>,
    step: StepId,
    named: Option<&Instance>,
    sister: Option<&Case<'_>>,
    stage: u8,
) -> Prose {
    if step.is_general() {
        return general::hint(words, case, step, stage);
    }
    let worked = || sister.and_then(|sister| worked_sister(words, case, sister, step));
    let of_method = named.is_some_and(|named| named.mistake.is_of_method());
    match stage {
        0 | 1 => about(words, case, step, named, "look"),
        2 => match of_method.then(worked).flatten() {
            Some(prose) => prose,
            None => about(words, case, step, named, "place"),
        },
        3 if of_method && worked().is_some() => about(words, case, step, named, "place"),
        3 => match worked() {
            Some(prose) => prose,
            None => about(words, case, step, None, "look"),
        },
        _ => case.line_said(words).then(line_itself(words, case, step)),
    }
}

/// A hint of the first two stages.
fn about(
    words: &Words,
    case: &Case<'_>,
    step: StepId,
    named: Option<&Instance>,
    stage: &str,
) -> Prose {
    let is_part = matches!(step, StepId::Reaction(_, Part::Along(_)));
    let along = rope_along(case).filter(|_| is_part);
    // A rope that pulls along an axis has no triangle to speak of.
    let named = named.filter(|named| along.is_none() || named.mistake.family != WRONG_LEG);
    let force = match named {
        Some(instance) => moved_instead(case, instance).or_else(|| spoken_force(instance, step)),
        None => step.force(),
    };
    let symbol = match force.and_then(|force| case.problem.force(force)) {
        Some(force) => force.symbol.shown(),
        None => words.word("hint.each-force"),
    };
    let slots = [
        ("force", Slot::Name(symbol)),
        ("step", Slot::Word(step_title(words, case.problem, step))),
        ("body", Slot::Word(case.problem.body().noun.clone())),
    ];
    if let Some(instance) = named {
        let key = format!("family.{}.{stage}", instance.mistake.family);
        // A part of the hinge's force is found from parts along the axes, not across the body.
        let by_axes = format!("{key}-by-axes");
        let key = if is_part && words.has(&by_axes) {
            by_axes
        } else {
            key
        };
        if words.has(&key) {
            return words.say(&key, &slots);
        }
    }
    let key = format!("hint.{}.{stage}", kind_word(step));
    let so = along.map(|axis| match axis {
        Axis::Horizontal => format!("{key}-level-rope"),
        Axis::Vertical => format!("{key}-upright-rope"),
    });
    words.say(&so.filter(|so| words.has(so)).unwrap_or(key), &slots)
}

/// The axis along which the only rope pulls with all of its force, if it does.
fn rope_along(case: &Case<'_>) -> Option<Axis> {
    let [rope] = case.problem.ropes() else {
        return None;
    };
    let (body, values) = (case.problem.body(), case.problem.values());
    let angle = rope.direction.angle(body, &values);
    if libm::sin(angle).abs() < 1e-9 {
        Some(Axis::Horizontal)
    } else {
        (libm::cos(angle).abs() < 1e-9).then_some(Axis::Vertical)
    }
}

/// The force that a mistake put at the place of the one it is named after, which stands where it
/// should: all weights at the place of the load.
fn moved_instead(case: &Case<'_>, instance: &Instance) -> Option<ForceId> {
    let distance = |key: &Key, force| {
        let step = key.step(StepId::Distance(force));
        step.map(|step| step.rule.clone())
    };
    let moved = |force: &ForceId| distance(case.key, *force) != distance(&instance.key, *force);
    let named = instance.force()?;
    let mut forces = case.problem.forces().into_iter().map(|force| force.id);
    forces.find(moved).filter(|_| !moved(&named))
}

/// The force to speak about when a mistake was named at a step: where a component is asked, that
/// force, though the angle that is wrong may bear another's name.
pub fn spoken_force(instance: &Instance, step: StepId) -> Option<ForceId> {
    match step {
        StepId::Across(force) => Some(force),
        step => instance.force().or_else(|| step.force()),
    }
}

/// The kind of a step, as the catalogue of words calls it.
pub fn kind_word(step: StepId) -> &'static str {
    match step {
        StepId::Forces => "forces",
        StepId::Pivot => "pivot",
        StepId::Weight(_) => "weight",
        StepId::Distance(_) => "distance",
        StepId::Angle(_) => "angle",
        StepId::Across(_) => "across",
        StepId::Moment(_) => "moment",
        StepId::KnownMoments => "known-moments",
        StepId::MomentSum => "moment-sum",
        StepId::Pull(_) => "pull",
        StepId::PartOf(..) => "part",
        StepId::ForceSum(_) => "force-sum",
        StepId::Reaction(_, Part::Along(crate::key::Axis::Horizontal)) => "reaction-x",
        StepId::Reaction(_, Part::Along(crate::key::Axis::Vertical)) => "reaction-y",
        StepId::Reaction(_, Part::Size) => "reaction-size",
        StepId::Reaction(_, Part::Direction) => "reaction-direction",
        StepId::Found(..) => "found",
        StepId::Sum(..) => "balance",
    }
}

/// The name of a step of a general working in a few words.
pub fn general_title(words: &Words, key: &Key, step: StepId) -> String {
    general::title(words, key, step)
}

/// What is asked at a step of a general working.
pub fn general_question(words: &Words, key: &Key, step: StepId) -> Prose {
    general::question(words, key, step)
}

/// The end of the key of an example for a step of a general working.
pub fn general_example(key: &Key, step: StepId) -> &'static str {
    general::example(key, step)
}

/// True for a balance of a general working that is told again by what it gives.
pub fn is_said_again(case: &Case<'_>, step: StepId) -> bool {
    general::is_said_again(case, step)
}

/// What is asked of an angle or of what is solved for, in one word: of a weight's line, which all
/// weights share, of a given force's or a support's, or of a rope itself; a tension or a push.
pub fn kind_of_force(problem: &Problem, step: StepId) -> &'static str {
    let force = step.force().and_then(|force| problem.force(force));
    let size = force.map(|force| force.size);
    match (step, size) {
        (StepId::Angle(ForceId::Rope(_)), _) => "angle",
        (StepId::Angle(_), Some(Size::Weight(_))) => "angle-weights",
        (StepId::Angle(_), _) => "angle-force",
        (StepId::Pull(ForceId::Support(_)), _) => "push",
        _ => kind_word(step),
    }
}

/// A step's name in a few words: "weight of the lamp".
pub fn step_title(words: &Words, problem: &Problem, step: StepId) -> String {
    let noun = step
        .force()
        .and_then(|force| problem.force(force))
        .map_or_else(String::new, |force| force.noun.to_owned());
    let key = match step {
        StepId::Angle(_) | StepId::Pull(_) => format!("title.{}", kind_of_force(problem, step)),
        StepId::PartOf(_, Axis::Horizontal) => "title.part.x".to_owned(),
        StepId::PartOf(_, Axis::Vertical) => "title.part.y".to_owned(),
        _ => format!("title.{}", kind_word(step)),
    };
    let symbol = step
        .force()
        .and_then(|force| problem.force(force))
        .map_or_else(String::new, |force| force.symbol.shown());
    let slots = [
        ("noun", Slot::Word(noun)),
        ("force", Slot::Name(symbol)),
        ("body", Slot::Word(problem.body().noun.clone())),
    ];
    words.say(&key, &slots).to_string()
}

/// The line itself: formula in names, in numbers, and the value.
pub fn line_itself(words: &Words, case: &Case<'_>, step: StepId) -> Prose {
    let Some(found) = case.key.step(step) else {
        return Prose::default();
    };
    match (&found.rule, step) {
        (Rule::Statement, StepId::Forces) => {
            let all: Vec<String> = case
                .problem
                .forces()
                .iter()
                .map(|force| force_words(words, case, force.id))
                .collect();
            Prose::plain(format!("{}.", all.join("; ")))
        }
        (Rule::Statement, _) => words.say("hint.pivot.line", &[]),
        _ => Prose(vec![crate::text::Piece {
            tag: crate::text::Tag::Value,
            text: told(words, case, step),
        }]),
    }
}

/// The line itself for one force.
pub fn force_line(words: &Words, case: &Case<'_>, force: ForceId) -> Prose {
    let told = Prose::plain(format!("{}.", force_words(words, case, force)));
    words.say("hint.line", &[]).then(told)
}

/// A force in words: "weight of the mast: at its middle, straight down".
pub fn force_words(words: &Words, case: &Case<'_>, id: ForceId) -> String {
    let marks = crate::sketch::Marks {
        stage: crate::sketch::Stage::Forces,
        forces: vec![crate::sketch::ForceMark {
            force: id,
            label: case
                .problem
                .force(id)
                .map_or_else(String::new, |force| force.symbol.shown()),
            direction: None,
        }],
        ..Default::default()
    };
    let told = crate::sketch::tell(case.problem, &case.sampling.own().values, &marks);
    let sentences = crate::sketch::told_words(&told, words);
    sentences
        .last()
        .map_or_else(String::new, ToString::to_string)
        .trim_end_matches('.')
        .to_owned()
}

/// A step as written on the board, with the way that its sign or its angle means:
/// `Hx = Tx = 64.2 N (to the right)`.
pub fn told(words: &Words, case: &Case<'_>, step: StepId) -> String {
    let bare = match step.is_general() {
        true => general::told(case, step),
        false => without_way(case, step),
    };
    match way(words, case, step) {
        Some(way) if step.along().is_some() => format!("{bare} ({way})"),
        // The angle of a force is told from its way.
        Some(way) => format!("{bare} {way}"),
        None => bare,
    }
}

/// The way that the sign of a part or the angle of a force means; of what acts between two bodies
/// that on the body for which it is counted.
fn way(words: &Words, case: &Case<'_>, step: StepId) -> Option<Prose> {
    let general = case.key.general.as_ref();
    let value = |step| case.key.value(step, case.sampling.own(), &case.own);
    let parts = match step {
        StepId::Reaction(force, Part::Direction) => {
            let part = |axis| StepId::Reaction(force, Part::Along(axis));
            Some([part(Axis::Horizontal), part(Axis::Vertical)])
        }
        StepId::Found(Nature::Direction, _) => general?.parts.get(&step).copied(),
        _ => None,
    };
    let along = |axis, value: f64| words.say(way_word(axis, value >= 0.0), &[]);
    let told = match (step.along(), parts) {
        (Some(axis), _) => {
            let value = value(step)?;
            // What is nothing points nowhere.
            if general.is_some() && value.abs() < 1e-9 {
                return None;
            }
            along(axis, value)
        }
        (None, Some([level, upright])) => {
            let above = match value(upright)? >= 0.0 {
                true => "solve.above",
                false => "solve.below",
            };
            let slots = [
                ("vertical", Slot::Prose(words.say(above, &[]))),
                ("side", Slot::Prose(along(Axis::Horizontal, value(level)?))),
            ];
            words.say("solve.direction", &slots)
        }
        (None, None) => return None,
    };
    Some(on_body(words, case.key, step, told))
}

/// The word for a way along an axis.
pub fn way_word(axis: Axis, positive: bool) -> &'static str {
    match (axis, positive) {
        (Axis::Horizontal, true) => "solve.right",
        (Axis::Horizontal, false) => "solve.left",
        (Axis::Vertical, true) => "solve.up",
        (Axis::Vertical, false) => "solve.down",
    }
}

/// A way with the body on which something acts so, where it acts the opposite way on another.
pub fn on_body(words: &Words, key: &Key, step: StepId, way: Prose) -> Prose {
    let general = key.general.as_ref();
    let Some([first, _]) = general.and_then(|general| general.between.get(&step)) else {
        return way;
    };
    let slots = [
        ("way", Slot::Prose(way)),
        ("body", Slot::Word(first.clone())),
    ];
    words.say("solve.on-body", &slots)
}

/// A step in names, in numbers, and its value.
fn without_way(case: &Case<'_>, step: StepId) -> String {
    let Some(found) = case.key.step(step) else {
        return String::new();
    };
    let unknown = case
        .key
        .steps
        .iter()
        .map(|step| step.id)
        .find(|id| matches!(id, StepId::Pull(_)));
    let before = unknown.is_some_and(|unknown| case.key.rank(step) < case.key.rank(unknown));
    let named: Vec<StepId> = unknown.into_iter().filter(|_| before).collect();
    let teller = case.teller(&named);
    if let Some(balance) = case.key.balance(step) {
        let names = balance_names(case.problem, case.key, balance);
        return format!("{names}, {}", balance_numbers(&teller, balance));
    }
    let Some(formula) = case.key.formula(step) else {
        return String::new();
    };
    let names = formula_names(case.problem, case.key, &formula);
    // Parts along an axis are asked nowhere: they are told here, as they come about, unless she has
    // told them herself.
    let whole = formula.rewrite(&|part| match part {
        Formula::Atom(Atom::Step(id @ StepId::PartOf(..))) if !case.own.contains_key(id) => {
            case.key.formula(*id)
        }
        _ => None,
    });
    let numbers = formula_numbers(&teller, &whole);
    let of_unknown = before
        && matches!(step, StepId::Across(_))
        && formula.inputs().iter().any(|id| named.contains(id));
    // A given number, printed as it was given, needs no second telling at the figures asked.
    let is_given = matches!(formula.bare(), Formula::Atom(Atom::Given(_)));
    let value = case
        .key
        .value(step, case.sampling.own(), &case.own)
        .filter(|_| !of_unknown && !is_given)
        .map(|value| value_text(value, found.dimension, case.problem.figures()));
    let whole = formula_names(case.problem, case.key, &whole);
    let mut parts = vec![found.symbol.shown(), names, whole, numbers];
    parts.extend(value);
    parts.dedup();
    parts.join(" = ")
}

/// The same kind of step in the sister problem, unless it would show the very value asked for.
fn worked_sister(words: &Words, case: &Case<'_>, sister: &Case<'_>, step: StepId) -> Option<Prose> {
    let same = sister.key.step(step).map(|found| found.id).or_else(|| {
        sister
            .key
            .steps
            .iter()
            .map(|step| step.id)
            .find(|id| kind_word(*id) == kind_word(step))
    })?;
    match same {
        StepId::Forces => return None,
        StepId::Pivot => return sister_pivot(words, sister),
        _ => {}
    }
    let theirs = (sister.key, sister.sampling.own());
    let share = case.key.share_apart(step, case.sampling.own(), theirs);
    if share.is_some_and(|share| share <= SISTER_APART) {
        return None;
    }
    let slots = [
        ("givens", Slot::Value(givens(sister))),
        ("line", Slot::Value(told(words, sister, same))),
        ("step", Slot::Word(step_title(words, sister.problem, same))),
    ];
    Some(words.say("hint.sister", &slots))
}

fn givens(case: &Case<'_>) -> String {
    let givens = case.problem.givens().iter();
    let told: Vec<String> = givens
        .map(|given| format!("{} = {}", given.symbol.shown(), given.written))
        .collect();
    told.join(", ")
}

/// The force of the same kind in the sister problem, in words; `None` where it has none. Where the
/// sister's force is told in the very words of the one asked, only its way is told, with the reason.
pub fn sister_force(
    words: &Words,
    case: &Case<'_>,
    sister: &Case<'_>,
    force: ForceId,
) -> Option<Prose> {
    let same = |id: &ForceId| std::mem::discriminant(id) == std::mem::discriminant(&force);
    let forces = sister.problem.forces();
    let all = || forces.iter().map(|force| force.id);
    let like = all().find(|id| *id == force).or_else(|| all().find(same))?;
    let body = sister.problem.body();
    if like == ForceId::OwnWeight && body.centre == Place::Middle {
        let length = sister.problem.given(body.length);
        let half = value_text(
            length.value / 2.0,
            Dimension::LENGTH,
            sister.problem.figures(),
        );
        let slots = [
            ("body", Slot::Word(body.noun.clone())),
            ("length", Slot::Value(length.written.clone())),
            ("distance", Slot::Value(half)),
        ];
        return Some(words.say("hint.sister-own-weight", &slots));
    }
    let line = force_words(words, sister, like);
    if line == force_words(words, case, force) {
        return sister_way(words, sister, like);
    }
    let slots = [
        ("givens", Slot::Value(givens(sister))),
        ("line", Slot::Value(line)),
    ];
    Some(words.say("hint.sister-force", &slots))
}

/// Which way a force of the sister problem acts, and why; its place is left to be found.
fn sister_way(words: &Words, sister: &Case<'_>, force: ForceId) -> Option<Prose> {
    let told = sister.problem.force(force)?;
    let key = match (force, told.size, told.acting) {
        (ForceId::Rope(_), ..) => "hint.sister-way.rope",
        (_, Size::Weight(_), _) => "hint.sister-way.weight",
        (_, _, Acting::Anywhere) => "hint.sister-way.hinge",
        _ => "hint.sister-way.other",
    };
    let slots = [
        ("force", Slot::Name(told.symbol.shown())),
        ("noun", Slot::Word(told.noun.to_owned())),
        ("body", Slot::Word(sister.problem.body().noun.clone())),
    ];
    Some(words.say(key, &slots))
}

/// What a point off every unknown leaves in a moment sum, in the sister problem; `None` where an
/// unknown acts at the middle.
fn sister_pivot(words: &Words, sister: &Case<'_>) -> Option<Prose> {
    let values = sister.problem.values();
    let middle = sister.problem.distance(Place::Middle, &values);
    let mut names = Vec::new();
    for force in sister.problem.forces() {
        if force.size != Size::Unknown {
            continue;
        }
        if (sister.problem.distance(force.at, &values) - middle).abs() < 1e-6 {
            return None;
        }
        names.push(force.symbol.shown());
    }
    let [one, other] = names.as_slice() else {
        return None;
    };
    let slots = [
        ("body", Slot::Word(sister.problem.body().noun.clone())),
        ("one", Slot::Name(one.clone())),
        ("other", Slot::Name(other.clone())),
    ];
    Some(words.say("hint.sister-pivot", &slots))
}
