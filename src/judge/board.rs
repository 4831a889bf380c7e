//! What a line is judged against: the problem, its key, and the learner's standing lines.

use super::by_balance::{by_forces_on_all, by_other_balances, by_own_parts, by_size};
use super::followed::{follows_own, functions_of_own, nearest_inputs, pins_of_own};
use super::grade::{COMMON_FIGURES, Grade};
pub use super::lift::Effort;
use super::names::{NameRole, Names};
pub use super::standing::{Own, OwnName, Standing};
use crate::key::{Key, Part, Pins, Samples, Sampling, StepId, agree};
use crate::problem::{Direction, FiguresAsked, ForceId, Problem};
use crate::reading::{NameId, Value};
use std::cell::RefCell;
use std::collections::BTreeMap;

/// Standard acceleration of free fall and its roundings to three and two figures, in m/s².
const USUAL_GRAVITIES: [f64; 3] = [9.806_65, 9.81, 9.8];

/// The most of the learner's own wrong values of which every choice is tried.
const MOST_OWN: usize = 6;
/// The most wrong parts of her own that are tried in both senses.
const MOST_TURNED: usize = 3;
/// A value is what others of hers give if it is nearer to that than this share.
const IN_SENSE: f64 = 0.01;

/// Everything that a line is judged against.
pub struct Board<'a> {
    /// The problem.
    pub problem: &'a Problem,
    /// The right key.
    pub key: &'a Key,
    /// The choices of numbers at which functions are compared.
    pub sampling: &'a Sampling,
    /// The names that may be typed.
    pub names: &'a Names,
    /// The learner's standing values.
    pub standing: &'a Standing,
    /// The learner's own names, in the order handed to [`Names::of`].
    pub own_names: &'a [OwnName],
    /// Wrong values of hers that later ones took the place of: what follows from them counts no
    /// more.
    pub earlier: &'a [(StepId, Own)],
    /// Steps whose wrong relation the learner chose to go on with, and the key of that mistake:
    /// what follows from it is right too.
    pub carried: &'a [(StepId, Key)],
    /// Steps whose names stand in the sense that the learner counted, not in the key's.
    pub turned: &'a [StepId],
    /// The noun of the body that was said with the line: `6 kN up on the right beam`.
    pub on_body: Option<&'a str>,
    /// Those that were said with the statements after the first one of a line, one for each; none
    /// where one stands for all of them.
    pub on_next: &'a [&'a str],
    /// True where what is not seen is looked at once more, with more that numbers may stand for.
    pub wide: bool,
    /// What was spent on the line so far, over all that it is judged beside; none: no bound.
    pub effort: Option<&'a Effort>,
    /// What was worked out for this board already.
    pub memo: Memo,
}

/// Functions that are asked for many times while one line is judged.
#[derive(Debug, Default)]
pub struct Memo {
    right: RefCell<BTreeMap<StepId, Option<Samples>>>,
    named: RefCell<BTreeMap<NameRole, Option<Samples>>>,
    accepted: RefCell<BTreeMap<StepId, Accepted>>,
    /// The least and greatest value of a step by rounding, by what it was worked out from.
    pub(super) hulls: RefCell<BTreeMap<HullOf, Option<(f64, f64)>>>,
}

/// A step, the values pinned before it at the problem's numbers (bit by bit, as a key needs an
/// order), and whether right ones stand whatever these give.
pub(super) type HullOf = (StepId, Vec<(StepId, u64)>, bool);

/// Functions that count as right for a step, each with the lines used.
type Accepted = Vec<(Samples, Vec<usize>)>;

/// Values pinned at every choice of numbers.
pub(crate) type PinnedSamples = BTreeMap<StepId, Samples>;

impl<'a> Board<'a> {
    /// A board on which nothing but `standing` was typed yet.
    pub fn of(
        (problem, key, sampling): (&'a Problem, &'a Key, &'a Sampling),
        (names, standing): (&'a Names, &'a Standing),
    ) -> Self {
        Board {
            problem,
            key,
            sampling,
            names,
            standing,
            own_names: &[],
            carried: &[],
            turned: &[],
            earlier: &[],
            on_body: None,
            on_next: &[],
            wide: false,
            effort: None,
            memo: Memo::default(),
        }
    }
}

impl Board<'_> {
    /// The unknown of the moment balance.
    pub fn unknown(&self) -> Option<StepId> {
        self.key.unknown()
    }

    /// True where fewer than three figures count: two are asked, or too few are only told of.
    pub(super) fn few_figures_count(&self) -> bool {
        self.problem.figures() < COMMON_FIGURES || self.problem.asks().figures == FiguresAsked::Told
    }

    /// What a right value in too few figures is.
    pub(super) fn few_figures(&self, figures: u8) -> Grade {
        match self.few_figures_count() && figures >= 2 {
            true => Grade::Rounded,
            false => Grade::TooFewFigures,
        }
    }

    /// What stands, with the unknown as it is right: beside it a balance of forces shows its terms.
    pub(crate) fn with_unknown_right(&self) -> Option<(StepId, Standing)> {
        let unknown = self.unknown()?;
        let function = self.right(unknown)?;
        let mut standing = self.standing.clone();
        standing.insert(unknown, Own::right(function, 0));
        Some((unknown, standing))
    }

    /// Adds the parts of the hinge's force that are not found, as they are right.
    pub(crate) fn add_right_parts(&self, standing: &mut Standing) {
        let parts = self.key.steps.iter().map(|step| step.id);
        let parts = parts.filter(|id| matches!(id, StepId::Reaction(_, Part::Along(_))));
        for id in parts {
            if let Some(function) = self.right(id) {
                standing.entry(id).or_insert(Own::right(function, 0));
            }
        }
    }

    /// The accelerations of free fall beside the problem's own that are no fault, in m/s²: those
    /// of the lesson, standard gravity (3rd CGPM, 1901) and its usual roundings.
    pub(super) fn other_gravities(&self) -> Vec<f64> {
        let mut found = self.problem.accepted_gravity().to_vec();
        for usual in USUAL_GRAVITIES {
            if !found.contains(&usual) && self.problem.gravity() != usual {
                found.push(usual);
            }
        }
        found
    }

    /// The value of a name with its dimension, given its number.
    pub(super) fn value_of_name(&self, id: NameId, number: f64) -> Value {
        match self.names.role(id) {
            Some(NameRole::Own(index)) if self.own_names.get(index).is_some_and(|own| own.bare) => {
                Value::bare(number)
            }
            _ => Value::of(number, self.names.dimension(id)),
        }
    }

    /// What a bare name of the learner's own stands for where an angle is taken, in degrees.
    pub(super) fn degrees_of_name(&self, id: NameId) -> Option<Samples> {
        match self.names.role(id)? {
            NameRole::Own(index) => self.own_names.get(index).filter(|own| own.bare)?.degrees,
            _ => None,
        }
    }

    /// The right function of a step, before the unknown is found (see [`Key::function`]).
    pub fn right(&self, id: StepId) -> Option<Samples> {
        let known = self.memo.right.borrow().get(&id).copied();
        known.unwrap_or_else(|| {
            let function = self
                .key
                .function(self.key, id, self.sampling, &BTreeMap::new());
            self.memo.right.borrow_mut().insert(id, function);
            function
        })
    }

    /// The learner's own wrong values, as pins.
    pub fn own_pins(&self) -> PinnedSamples {
        self.standing
            .iter()
            .filter(|(_, own)| !own.right)
            .map(|(id, own)| (*id, own.function))
            .collect()
    }

    /// The functions that count as right for a step: the right one first, then those that follow
    /// from some of the learner's own wrong values, each with the lines used.
    pub fn accepted(&self, id: StepId) -> Accepted {
        let known = self.memo.accepted.borrow().get(&id).cloned();
        known.unwrap_or_else(|| {
            let accepted = self.accepted_anew(id);
            self.memo.accepted.borrow_mut().insert(id, accepted.clone());
            accepted
        })
    }

    fn accepted_anew(&self, id: StepId) -> Accepted {
        let mut accepted = Accepted::new();
        let mut add = |function: Option<Samples>, lines: Vec<usize>| {
            let Some(function) = function else { return };
            match accepted
                .iter_mut()
                .find(|(known, _)| agree(known, &function))
            {
                // What fewer lines give rests on these.
                Some((_, known)) if lines.len() < known.len() => *known = lines,
                Some(_) => {}
                None => accepted.push((function, lines)),
            }
        };
        add(self.right(id), Vec::new());
        // A balance of her own gives her the unknown.
        let own_balance = self.key.sum_of(id).and_then(|sum| self.standing.get(&sum));
        if let Some(own) = own_balance.filter(|own| !own.right) {
            add(Some(own.function), vec![own.line]);
        }
        // Once the unknown stands, her balance has given what it could.
        let stands = |step: StepId| match step.is_balance() {
            true => self
                .key
                .gives(step)
                .filter(|unknown| !self.standing.contains_key(unknown)),
            false => Some(step),
        };
        let mut wrong: Vec<(StepId, &Own)> = self
            .standing
            .iter()
            .filter(|(_, own)| !own.right)
            .filter_map(|(step, own)| Some((stands(*step)?, own)))
            .filter(|(step, _)| *step != id)
            .collect();
        if wrong.len() > MOST_OWN {
            let nearest = nearest_inputs(self.key, id);
            let far = |step: &StepId| nearest.iter().position(|near| near == step);
            wrong.sort_by_key(|(step, _)| far(step).unwrap_or(nearest.len()));
        }
        // A relation that was carried on gives the unknown; the hinge's balances are new lines, and
        // take from it that value alone, or a part of the pull.
        let anew = is_of_forces(id);
        let of_part = |step: StepId| matches!(step, StepId::PartOf(..)) && step != id;
        let carried = self.carried.iter();
        let carried: Vec<&Key> = carried
            .filter(|(step, _)| !anew || of_part(*step))
            .map(|(_, key)| key)
            .collect();
        let settled = self.settled(id);
        // All own values first, then each subset: a learner may silently repair some of them.
        let most = 1_usize << wrong.len().min(MOST_OWN);
        for chosen in (1..most).rev() {
            let used: Vec<&(StepId, &Own)> = wrong
                .iter()
                .enumerate()
                .filter(|(index, _)| chosen & (1 << index) != 0)
                .map(|(_, used)| used)
                .collect();
            let (mut pins, mut lines) = self.in_place(id);
            pins.extend(used.iter().map(|(step, own)| (*step, own.function)));
            lines.extend(used.iter().map(|(_, own)| own.line));
            lines.sort_unstable();
            lines.dedup();
            // What she has right stands beside them, though they would give another value.
            let mut beside = settled.clone();
            beside.extend(pins.clone());
            let both = [&pins, &beside];
            let both = if beside == pins { &both[..1] } else { &both };
            for pins in both {
                add(
                    self.key.function(self.key, id, self.sampling, pins),
                    lines.clone(),
                );
                // A force told by its size alone has the parts that her values give it.
                if id.is_unknown() && !self.key.open_in(id).is_empty() {
                    add(self.key.samples(id, self.sampling, pins), lines.clone());
                }
                for key in &carried {
                    add(
                        key.function(self.key, id, self.sampling, pins),
                        lines.clone(),
                    );
                }
            }
        }
        for key in carried {
            add(
                key.function(self.key, id, self.sampling, &BTreeMap::new()),
                Vec::new(),
            );
        }
        self.add_turned_about(id, &wrong, &mut add);
        let others = by_other_balances(self, id).into_iter();
        for (function, lines) in others
            .chain(by_forces_on_all(self, id))
            .chain(by_own_parts(self, id))
            .chain(by_size(self, id))
        {
            add(Some(function), lines);
        }
        if anew {
            self.add_with_own_slopes(id, (&wrong, &settled), &mut add);
        }
        accepted
    }

    /// A wrong part of hers of a general working may have been counted in either sense: what follows
    /// from all her wrong values with that one turned about.
    fn add_turned_about(
        &self,
        id: StepId,
        wrong: &[(StepId, &Own)],
        add: &mut dyn FnMut(Option<Samples>, Vec<usize>),
    ) {
        let free = |step: StepId| step.is_general() && step.has_free_sense();
        for (part, _) in wrong
            .iter()
            .filter(|(step, _)| free(*step))
            .filter(|(step, own)| !self.is_in_sense(*step, own, wrong))
            .take(MOST_TURNED)
        {
            let turned = |(step, own): &(StepId, &Own)| {
                let sign = if step == part { -1.0 } else { 1.0 };
                (*step, own.function.map(|value| sign * value))
            };
            let (mut pins, mut lines) = self.in_place(id);
            pins.extend(wrong.iter().map(turned));
            lines.extend(wrong.iter().map(|(_, own)| own.line));
            lines.sort_unstable();
            lines.dedup();
            add(self.key.function(self.key, id, self.sampling, &pins), lines);
        }
    }

    /// True for a wrong value that her other lines give in this sense: she did not count it the other
    /// way.
    fn is_in_sense(&self, step: StepId, own: &Own, wrong: &[(StepId, &Own)]) -> bool {
        // A strut that pushes pushes from where she told its force.
        if own.against && self.is_pushing_strut(step) {
            return true;
        }
        let others = wrong.iter().filter(|(other, _)| *other != step);
        let pins: PinnedSamples = others.map(|(id, own)| (*id, own.function)).collect();
        let keys = std::iter::once(self.key).chain(self.carried.iter().map(|(_, key)| key));
        let followed = keys.filter_map(|key| key.function(key, step, self.sampling, &pins));
        let sum = self.key.sum_of(step);
        let balance = sum.and_then(|sum| self.standing.get(&sum));
        let mut given = followed.chain(balance.map(|own| own.function));
        given.any(|function| {
            let apart = (function[0] - own.function[0]).abs();
            apart <= IN_SENSE * own.function[0].abs()
        })
    }

    /// The values that she has right, as functions, without that of a step; multiples of the unknown
    /// are relations.
    fn settled(&self, id: StepId) -> PinnedSamples {
        let of_unknown = |step: StepId| {
            matches!(step, StepId::Across(_) | StepId::Moment(_))
                && step.force() == self.unknown().and_then(StepId::force)
        };
        self.standing
            .iter()
            .filter(|(step, own)| {
                own.right && **step != id && !step.is_balance() && !of_unknown(**step)
            })
            .filter_map(|(step, _)| Some((*step, self.right(*step)?)))
            .collect()
    }

    /// The values that took the place of earlier ones, without that of a step, and the lines of
    /// those that are wrong: they count, whatever else of hers would give there.
    pub(super) fn in_place(&self, id: StepId) -> (PinnedSamples, Vec<usize>) {
        let (mut pins, mut lines) = (PinnedSamples::new(), Vec::new());
        for (step, _) in self.earlier.iter().filter(|(step, _)| *step != id) {
            let own = self.standing.get(step);
            let wrong = own.filter(|own| !own.right);
            let function = match wrong {
                Some(own) => Some(own.function),
                None => own.and_then(|_| self.right(*step)),
            };
            pins.extend(function.map(|function| (*step, function)));
            lines.extend(wrong.map(|own| own.line));
        }
        (pins, lines)
    }

    /// An angle on which a step rests and that has, rightly, the value of a wrong one of hers.
    pub(super) fn alike(&self, id: StepId, own: &Own) -> Option<StepId> {
        let alike = |right: &Samples| (right[0] - own.value).abs() <= 1e-9 * own.value.abs();
        let mut inputs = nearest_inputs(self.key, id).into_iter().skip(1);
        inputs.find(|input| {
            let stands = self.standing.get(input).is_none_or(|own| own.right);
            input.is_angle() && stands && self.right(*input).is_some_and(|right| alike(&right))
        })
    }

    /// A learner whose angle between rope and body is her own sees the rope at a slope of its own:
    /// the level and upright parts follow from it.
    fn add_with_own_slopes(
        &self,
        id: StepId,
        (wrong, settled): (&[(StepId, &Own)], &PinnedSamples),
        add: &mut dyn FnMut(Option<Samples>, Vec<usize>),
    ) {
        for (step, own) in wrong {
            let Some(sampling) = self.with_own_slope(*step, own) else {
                continue;
            };
            // The parts rest on the angle and the pull; what else is her own may matter too.
            let needed = |id: StepId| id == *step || Some(id) == self.unknown();
            for all in [false, true] {
                let used = wrong.iter().filter(|(id, _)| all || needed(*id));
                let pins: PinnedSamples =
                    used.clone().map(|(id, own)| (*id, own.function)).collect();
                let mut lines: Vec<usize> = used.map(|(_, own)| own.line).collect();
                lines.sort_unstable();
                // What she has right stands beside her angle, though that would give another pull.
                let mut beside = settled.clone();
                beside.extend(pins.clone());
                for pins in [&pins, &beside] {
                    let function = self.key.function(self.key, id, &sampling, pins);
                    add(function, lines.clone());
                }
            }
        }
    }

    /// The choices of numbers at which a step of the balances of forces follows from a wrong angle
    /// between rope and body, each with the line of that angle.
    pub(super) fn own_slopes(&self, id: StepId) -> Vec<(Sampling, usize)> {
        let wrong = self.standing.iter().filter(|(_, own)| !own.right);
        wrong
            .filter(|_| is_of_forces(id))
            .filter_map(|(step, own)| Some((self.with_own_slope(*step, own)?, own.line)))
            .collect()
    }

    /// The choices of numbers with the rope's given angle as the learner's own angle has it.
    fn with_own_slope(&self, step: StepId, own: &Own) -> Option<Sampling> {
        let StepId::Angle(ForceId::Rope(rope)) = step else {
            return None;
        };
        let direction = self.problem.ropes().get(rope)?.direction;
        let (Direction::Oblique { angle, .. } | Direction::FromBody { angle }) = direction else {
            return None;
        };
        let right = self.right(step)?;
        let mut sampling = self.sampling.clone();
        for (choice, sample) in sampling.samples.iter_mut().enumerate() {
            let given = sample.values[angle.0];
            let off = own.function[choice] - right[choice];
            // A rope that she has at too small an angle does not slope the other way.
            let so = |moved: &f64| choice > 0 || moved * given > 0.0;
            let mut moved = [given + off, given - off].into_iter().filter(so);
            let fits = moved.find(|moved| {
                sample.values[angle.0] = *moved;
                let value = self.key.value(step, sample, &Pins::new());
                value.is_some_and(|value| (value - own.function[choice]).abs() < 1e-9)
            });
            sample.values[angle.0] = fits?;
        }
        Some(sampling)
    }

    /// What a name stands for as a function of the givens: a learner's own wrong value where
    /// there is one, else the right one.
    pub(super) fn name_function(&self, role: NameRole) -> Option<Samples> {
        let known = self.memo.named.borrow().get(&role).copied();
        known.unwrap_or_else(|| {
            let function = self.function_of_name(role);
            self.memo.named.borrow_mut().insert(role, function);
            function
        })
    }

    /// The sign of a name: −1 where it stands in the sense that the learner counted.
    pub(super) fn sign_of_name(&self, id: StepId) -> f64 {
        if self.turned.contains(&id) { -1.0 } else { 1.0 }
    }

    /// True for a step that the learner counted in another sense than the key, or that is made of
    /// such an unknown.
    pub(super) fn is_against(&self, id: StepId) -> bool {
        let against = |id: &StepId| self.standing.get(id).is_some_and(|own| own.against);
        let made_of = || {
            let mut unknowns = self.key.open_in(id).into_iter();
            unknowns.any(|unknown| against(&unknown) && self.key.is_multiple(id, unknown))
        };
        against(&id) || !self.standing.contains_key(&id) && made_of()
    }

    fn function_of_name(&self, role: NameRole) -> Option<Samples> {
        match role {
            NameRole::Given(id) => Some(std::array::from_fn(|choice| {
                self.sampling.samples[choice].values[id.0]
            })),
            NameRole::Gravity => Some(std::array::from_fn(|choice| {
                self.sampling.samples[choice].gravity
            })),
            NameRole::Step(id) => {
                let sign = self.sign_of_name(id);
                let function = match self.standing.get(&id) {
                    Some(own) if !own.right => own.function,
                    _ => self.followed(id).or_else(|| self.right(id))?,
                };
                Some(function.map(|value| sign * value))
            }
            NameRole::Own(index) => {
                let own = self.own_names.get(index)?;
                let factor = self.unknown_factor(own);
                Some(std::array::from_fn(|choice| {
                    own.function[choice] * factor.map_or(1.0, |factor| factor[choice])
                }))
            }
        }
    }

    /// What a step without a value of its own is by her wrong values, if it rests on them.
    fn followed(&self, id: StepId) -> Option<Samples> {
        if !follows_own(self.key, self.standing, id) {
            return None;
        }
        let pins = functions_of_own(self.key, self.standing, self.sampling);
        self.relation(id)
            .function(self.key, id, self.sampling, &pins)
    }

    /// The key that a step follows by: that of a wrong multiple of the unknown that she went on
    /// with, else the right one.
    fn relation(&self, id: StepId) -> &Key {
        let own = self.carried.last().filter(|_| {
            let multiple = self
                .unknown()
                .is_some_and(|one| self.key.is_multiple(id, one));
            multiple && !matches!(id, StepId::PartOf(..)) && !self.standing.contains_key(&id)
        });
        own.map_or(self.key, |(_, key)| key)
    }

    /// What a multiple of the unknown is to be multiplied by where the learner's own unknown is
    /// not the right one.
    fn unknown_factor(&self, own: &OwnName) -> Option<Samples> {
        let unknown = self.unknown().filter(|_| own.of_unknown)?;
        let (mine, right) = (self.standing.get(&unknown)?, self.right(unknown)?);
        (!mine.right).then(|| std::array::from_fn(|choice| mine.function[choice] / right[choice]))
    }

    /// True if a name is a multiple of the unknown, and the unknown is not found yet.
    pub(super) fn is_multiple_of_open(&self, role: NameRole) -> bool {
        let NameRole::Own(index) = role else {
            return false;
        };
        let open = self
            .unknown()
            .is_some_and(|unknown| !self.standing.contains_key(&unknown));
        open && self.own_names.get(index).is_some_and(|own| own.of_unknown)
    }

    /// The number that a name holds at the problem's own numbers.
    pub fn name_value(&self, role: NameRole) -> Option<f64> {
        match role {
            NameRole::Step(id) => {
                let value = match (self.followed(id), self.standing.get(&id)) {
                    (Some(_), _) => {
                        let pins = pins_of_own(self.key, self.standing, self.sampling);
                        self.relation(id).value(id, self.sampling.own(), &pins)?
                    }
                    (None, Some(own)) => own.value,
                    (None, None) => self.right(id)?[0],
                };
                Some(self.sign_of_name(id) * value)
            }
            NameRole::Own(index) => {
                let own = self.own_names.get(index)?;
                let factor = self.unknown_factor(own).map_or(1.0, |factor| factor[0]);
                Some(own.value * factor)
            }
            role => self.name_function(role).map(|function| function[0]),
        }
    }
}

/// True for what the balances of forces are made of and give.
fn is_of_forces(id: StepId) -> bool {
    matches!(
        id,
        StepId::ForceSum(_) | StepId::PartOf(..) | StepId::Reaction(..)
    )
}
