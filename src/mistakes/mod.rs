//! The catalogue of mistakes: each a rewrite of the right working.
//!
//! A mistake changes the model (a force forgotten), a balance (a term left out) or a formula (sine
//! for cosine), within a scope (one force, all weights, the pull, everywhere). Its rewritten key
//! gives what a learner who thinks so would have written, here and in every later step. Nothing
//! here is a string match or a list of numbers.
//!
//! One file a mistake, with the headings *What the learner did / Why it tempts / Rewrite / Known
//! false alarms / Source*. Words live in the catalogue of words, by `mistake.<id>`.

mod across_for_part;
mod all_divided_by_distance;
mod all_mass_at_one_point;
mod angle_of_another_force;
mod angle_sum_for_difference;
mod arctangent_inverted;
mod arm_multiplied;
mod arm_not_divided_out;
mod catalogue;
mod centimetre_metre;
mod complement;
mod components_added;
mod direction_reversed;
mod distance_left_out;
mod distances_exchanged;
mod divided_by_distance;
mod divided_by_g;
mod doubled_angle;
mod exchanged_at_the_end;
mod force_forgotten;
mod force_invented;
mod forces_for_moments;
mod from_the_far_end;
mod from_the_middle;
mod general;
mod general_balances;
mod general_everywhere;
mod general_formulas;
mod given_angle_as_is;
mod given_angle_in_part;
mod gradian_calculator;
mod gram_kilogram;
mod halved_angle;
mod halved_twice;
mod hinge_forgotten;
mod hypotenuse_confused;
mod level_pull_upright;
mod load_at_middle;
mod load_at_rope;
mod load_at_tip;
mod mass_for_weight;
mod mass_in_the_force_balance;
mod masses_exchanged;
mod misread_given;
mod moment_called_force;
mod multiplied_at_the_end;
mod not_resolved;
mod one_weight_only;
mod own_weight_at_rope;
mod own_weight_at_tip;
mod own_weight_left_out;
mod part_by_dividing;
mod part_by_tangent;
mod parts_added_with_signs;
mod pivot_at_the_rope;
mod pull_shared_between_forces;
mod radian_calculator;
mod reaction_along_the_body;
mod reaction_along_the_pull;
mod resolved_though_square;
mod resolved_twice;
mod rewriting;
mod rope_at_middle;
mod rope_at_tip;
mod rope_pull_forgotten_upward;
mod shared_equally;
mod shared_equally_upright;
mod shared_equally_whole;
mod sine_cosine_exchanged;
mod solved_wrongly;
mod squares_subtracted;
mod stopped_at_component;
mod tangent_used;
mod term_left_out;
mod turns_the_wrong_way;
mod two_pivots;
mod typed;
mod weight_left_out_upward;
mod weight_not_downward;
mod whole_tension_sideways;
mod whole_tension_upward;
mod wrong_pivot_without_the_hinge_term;

/// The family of mistakes about the two short sides of a right triangle.
pub(crate) const WRONG_LEG: &str = "wrong-leg";

/// The family of mistakes about whose mass makes a weight.
pub(crate) const MASS_OF_ANOTHER: &str = "mass-of-another";

/// The family of mistakes about forces and distances that are left whole.
pub(crate) const NOT_RESOLVED: &str = "not-resolved";

/// The family of pulls that are shared out without any balance.
pub(crate) const SHARED_OUT: &str = "shared-out";

/// Families of which each mistake is a wrong way of working.
const METHODS: &[&str] = &["no-distances", "moment-divided", SHARED_OUT];

pub use catalogue::CATALOGUE;
pub use general::general_instances;
pub use typed::{TypedLine, right_line, typed_line};

use crate::key::{Key, Part, Samples, Sampling, StepId, agree};
use crate::problem::{ForceId, Problem, Size};
use std::collections::BTreeMap;

/// What a mistake rewrites.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The model: changes every balance.
    Model,
    /// One balance.
    Balance,
    /// A formula.
    Formula,
}

/// Where a mistake is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Scope {
    /// In one step.
    Here(StepId),
    /// For one force, in every step it touches.
    Force(ForceId),
    /// For two forces that change places in something.
    Two(ForceId, ForceId),
    /// For all weights.
    Weights,
    /// For the pull that is looked for.
    Pull,
    /// For every force.
    Everywhere,
}

/// The skill that a mistake speaks about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Skill {
    /// Naming the forces on the body.
    Forces,
    /// Weights from masses.
    Weights,
    /// Where a force acts.
    Places,
    /// Angles between lines.
    Angles,
    /// Sine and cosine of a component.
    Resolving,
    /// The moment balance.
    Moments,
    /// Solving for the unknown.
    Solving,
    /// The force balances and the hinge.
    Reactions,
    /// Units, figures and the calculator.
    Numbers,
}

/// What stands in a form that shows a mistake, and not in one that only agrees with it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// A tangent.
    Tangent,
    /// A division by a sine or cosine.
    OverRatio,
    /// A function of an angle: a ratio worked out before does not tell it from a wrong angle.
    Angle,
}

/// A named wrong rule.
#[derive(Debug)]
pub struct Mistake {
    /// Its name, which never changes: journals hold it.
    pub id: &'static str,
    /// Mistakes that one first hint serves share a family.
    pub family: &'static str,
    /// What it rewrites.
    pub kind: Kind,
    /// The skill it speaks about.
    pub skill: Skill,
    /// How often it is met, as a pseudo-count against one another (common practice, no source).
    /// Nothing for a mistake that is named by its form only: no number speaks for it, and it has no
    /// part in which numbers are drawn.
    pub prior: f64,
    /// True for those that drawn numbers must keep apart from the right value.
    pub common: bool,
    /// What shows it in a form, where more than its value is needed.
    pub sign: Option<Sign>,
    /// Where it can be made in a problem.
    pub scopes: fn(&Problem, &Key) -> Vec<Scope>,
    /// The key of a learner who makes it; `None` where it does not apply.
    pub rewrite: fn(&Problem, &Key, Scope) -> Option<Key>,
}

impl Mistake {
    /// True for a wrong way of working, rather than a wrong piece of a right one.
    pub fn is_of_method(&self) -> bool {
        METHODS.contains(&self.family)
    }

    /// True where the pull is a share of all weights, whatever their moments.
    pub(crate) fn is_share_of_all(&self) -> bool {
        self.id.starts_with("shared-equally")
    }

    /// True for a mistake that is met too seldom for a prior of its own: no draw knows it, no pair has
    /// it, and a bare value names it only where nothing likelier has that value.
    pub(crate) fn has_no_prior(&self) -> bool {
        self.prior == 0.0
    }
}

/// A mistake made somewhere in a problem.
#[derive(Clone, Debug)]
pub struct Instance {
    /// Which mistake.
    pub mistake: &'static Mistake,
    /// Where.
    pub scope: Scope,
    /// The key of a learner who makes it.
    pub key: Key,
    /// The first asked step whose value or balance it changes.
    pub shows_at: StepId,
}

impl Instance {
    /// The force that the mistake speaks about: that of its scope, or of the step where it shows.
    pub fn force(&self) -> Option<ForceId> {
        match self.scope {
            Scope::Force(force) | Scope::Two(force, _) => Some(force),
            Scope::Here(step) => step.force().or_else(|| self.shows_at.force()),
            // Where all weights are wrong the first one is spoken of, wherever it shows.
            Scope::Weights => self.first_weight().or_else(|| self.shows_at.force()),
            Scope::Pull | Scope::Everywhere => self.shows_at.force(),
        }
    }

    /// The weight to speak about where what shows is no step of a weight: a part of the hinge's
    /// force shows what was done to the weights in its balance.
    fn first_weight(&self) -> Option<ForceId> {
        let of_hinge = matches!(self.shows_at, StepId::Reaction(..));
        let mut steps = self.key.steps.iter().filter(|_| of_hinge);
        steps.find_map(|step| match step.id {
            StepId::Weight(force) => Some(force),
            _ => None,
        })
    }

    /// The force that changes places with that one, in a mistake of two forces.
    pub fn other_force(&self) -> Option<ForceId> {
        match self.scope {
            Scope::Two(_, other) => Some(other),
            _ => None,
        }
    }
}

/// Every mistake that can be made in this problem and changes something.
pub fn instances(problem: &Problem, key: &Key, sampling: &Sampling) -> Vec<Instance> {
    let right = functions(key, sampling);
    candidates(problem, key, |_| true)
        .filter_map(|(mistake, scope, rewritten)| {
            let shows_at = shows_at(key, &rewritten, &right, sampling)?;
            Some(Instance {
                mistake,
                scope,
                key: rewritten,
                shows_at,
            })
        })
        .collect()
}

/// The first asked step that differs, each judged on right earlier values. `None` where nothing
/// differs or the rewritten key leaves the unknown without a value.
fn shows_at(
    key: &Key,
    rewritten: &Key,
    right: &[(StepId, Samples)],
    sampling: &Sampling,
) -> Option<StepId> {
    let unknown = unknown(key)?;
    let StepId::Pull(pulling) = unknown else {
        return None;
    };
    // Steps that were found to agree need not be worked out again for later ones, and the unknown
    // stands at its right value until the balance gives it.
    let (_, pulled) = right.iter().find(|(id, _)| *id == unknown)?;
    let mut pins = BTreeMap::from([(unknown, *pulled)]);
    for (id, right) in right {
        if *id == StepId::MomentSum {
            pins.remove(&unknown);
        }
        let wrong = function(rewritten, key, *id, sampling, &pins);
        if wrong.is_some_and(|wrong| !agree(right, &wrong) && !other_sense(*id, right, &wrong)) {
            pins.remove(&unknown);
            function(rewritten, key, unknown, sampling, &pins)?;
            return Some(*id);
        }
        let keeps = *id != StepId::MomentSum && *id != StepId::Across(pulling);
        if wrong.is_some() && keeps {
            pins.insert(*id, *right);
        }
    }
    None
}

/// True for a support's part that differs in its sense only: a sense is chosen, and either holds.
fn other_sense(id: StepId, right: &Samples, wrong: &Samples) -> bool {
    matches!(id, StepId::Reaction(_, Part::Along(_))) && agree(right, &wrong.map(|value| -value))
}

/// Every rewritten key of the mistakes that are `wanted`, also those that change nothing.
pub(crate) fn candidates(
    problem: &Problem,
    key: &Key,
    wanted: fn(&Mistake) -> bool,
) -> impl Iterator<Item = (&'static Mistake, Scope, Key)> {
    CATALOGUE
        .iter()
        .filter(move |mistake| wanted(mistake))
        .flat_map(|mistake| {
            (mistake.scopes)(problem, key)
                .into_iter()
                .map(move |scope| (*mistake, scope))
        })
        .filter_map(|(mistake, scope)| {
            Some((mistake, scope, (mistake.rewrite)(problem, key, scope)?))
        })
}

/// The functions of all asked steps that have one.
fn functions(key: &Key, sampling: &Sampling) -> Vec<(StepId, Samples)> {
    key.asked()
        .filter_map(|step| {
            let samples = function(key, key, step.id, sampling, &BTreeMap::new())?;
            Some((step.id, samples))
        })
        .collect()
}

/// The step of the unknown that the moment balance gives.
pub(crate) fn unknown(key: &Key) -> Option<StepId> {
    key.steps
        .iter()
        .map(|step| step.id)
        .find(|id| matches!(id, StepId::Pull(_)))
}

/// The function of a step in a key, as it stands before the unknown is found: the unknown itself
/// is pinned to its right value for every step that comes before it. A balance's function is the
/// unknown that it gives when it is solved rightly.
pub fn function(
    key: &Key,
    right: &Key,
    id: StepId,
    sampling: &Sampling,
    pins: &BTreeMap<StepId, Samples>,
) -> Option<Samples> {
    let unknown = unknown(right)?;
    if id == StepId::MomentSum {
        let solved = right.step(unknown)?.rule.clone();
        return match &key.step(unknown)?.rule {
            rule if *rule == solved => key.samples(unknown, sampling, pins),
            _ => key
                .with_rule(unknown, solved)
                .samples(unknown, sampling, pins),
        };
    }
    let mut pins = pins.clone();
    if right.rank(id)? < right.rank(unknown)? && !pins.contains_key(&unknown) {
        pins.insert(unknown, right.samples(unknown, sampling, &BTreeMap::new())?);
    }
    key.samples(id, sampling, &pins)
}

/// The value of a step in a key at the problem's own numbers.
pub fn value(key: &Key, right: &Key, id: StepId, sampling: &Sampling) -> Option<f64> {
    function(key, right, id, sampling, &BTreeMap::new()).map(|samples| samples[0])
}

/// The forces that a scope covers, among those with a step made by `step_of`.
pub(crate) fn covered(
    problem: &Problem,
    key: &Key,
    scope: Scope,
    step_of: fn(ForceId) -> StepId,
) -> Vec<ForceId> {
    let all = problem.forces();
    all.iter()
        .filter(|force| key.step(step_of(force.id)).is_some())
        .filter(|force| match scope {
            Scope::Here(step) => step_of(force.id) == step,
            Scope::Force(id) => force.id == id,
            Scope::Two(one, other) => force.id == one || force.id == other,
            Scope::Weights => matches!(force.size, Size::Weight(_) | Size::Given(_)),
            Scope::Pull => force.size == Size::Unknown,
            Scope::Everywhere => true,
        })
        .map(|force| force.id)
        .collect()
}

/// One scope for every force with a step made by `step_of`, then all weights, the pull, and
/// everywhere, each only where it says more than the scopes before it.
pub(crate) fn every_scope(
    problem: &Problem,
    key: &Key,
    step_of: fn(ForceId) -> StepId,
) -> Vec<Scope> {
    let with = |scope: Scope| covered(problem, key, scope, step_of);
    let all = with(Scope::Everywhere);
    let mut scopes: Vec<Scope> = all.iter().map(|id| Scope::Force(*id)).collect();
    if with(Scope::Weights).len() > 1 {
        scopes.push(Scope::Weights);
    }
    if all.len() > with(Scope::Weights).len().max(1) && with(Scope::Pull).len() < all.len() {
        scopes.push(Scope::Everywhere);
    }
    scopes
}
