//! What a screen shows of a session.

use super::Session;
use super::turn::{Course, NameView, Progress, StepView, View};
use crate::judge::{NameRole, OwnName, follows_own, pins_of_own};
use crate::key::{Axis, Formula, Part, Pins, StepId, formula_names};
use crate::problem::{Acting, ForceId, Place};
use crate::sketch::{AngleMark, ComponentMark, DistanceMark, ForceMark, Marks, Stage};
use crate::text::{Prose, Slot};
use crate::units::value_text;

impl Session {
    /// Everything that a screen shows now.
    pub fn view(&self) -> View {
        let stages = self.stages();
        View {
            title: self.problem.title().to_owned(),
            statement: self.problem.statement().to_owned(),
            caution: self.words.retold("caution", self.problem.caution()),
            scene: self.scene.clone(),
            sheet: self.sheet.clone(),
            steps: self.steps(),
            lines: self.state.lines.clone(),
            freely: self.is_free(),
            waits: self.state.open.is_some(),
            estimates: self.guess().is_some(),
            question: self.question(),
            choices: self.choices(),
            example: self.example(),
            names: self.name_views(),
            pivots: self.pivot_places(),
            marks: stages.last().cloned().unwrap_or_default(),
            stages,
            course: self.state.course,
            fading: self.fading(),
            summary: self.summary_of_example().unwrap_or_else(|| self.summary()),
            slips: self.slips_told(),
            keys: self.keys(),
        }
    }

    /// The stable name of a step, for the journal.
    pub(super) fn step_name(&self, step: StepId) -> String {
        self.general_step_name(step)
            .unwrap_or_else(|| crate::key::step_word(&self.problem, step))
    }

    fn steps(&self) -> Vec<StepView> {
        if self.is_free() {
            return self.steps_freely();
        }
        let now = self.at_hand();
        self.key
            .asked()
            .map(|step| StepView {
                title: self.title(step.id),
                progress: match self.state.reached.get(&step.id) {
                    _ if now == Some(step.id) => Progress::Now,
                    Some((progress, _)) => *progress,
                    None => Progress::Ahead,
                },
                result: self.result(step.id),
            })
            .collect()
    }

    /// A step's result as the learner has it.
    pub(super) fn result(&self, step: StepId) -> Option<String> {
        self.state.reached.get(&step)?;
        let found = self.key.step(step)?;
        let value = self.value_of(step)?;
        Some(format!(
            "{} = {}",
            found.symbol.shown(),
            value_text(value, found.dimension, self.problem.figures())
        ))
    }

    /// The value that a step's name holds: the learner's own, or the right one once passed.
    pub(super) fn value_of(&self, step: StepId) -> Option<f64> {
        let is_said = step.is_balance() || matches!(step, StepId::Forces | StepId::Pivot);
        // A step told in names alone has no value of hers yet.
        if is_said || self.state.in_names.contains(&step) {
            return None;
        }
        let follows = follows_own(&self.key, &self.state.standing, step);
        if let Some(own) = self.state.standing.get(&step).filter(|_| !follows) {
            return Some(own.value).filter(|_| self.is_number(step));
        }
        let reached =
            self.state.reached.contains_key(&step) && self.state.gone_on.get(&step) != Some(&false);
        // What is made of her own values follows them.
        let pins = match follows {
            true => pins_of_own(&self.key, &self.state.standing, &self.sampling),
            false => Pins::from_iter(self.pull_of(step)),
        };
        // A multiple of the learner's own that does not hold is told as it is.
        let carried = self.state.carried.last();
        let gone_on = self.state.gone_on.contains_key(&step);
        let key = carried
            .filter(|_| gone_on)
            .map_or(&self.key, |(_, key)| key);
        (reached && self.is_number(step))
            .then(|| key.value(step, self.sampling.own(), &pins))
            .flatten()
    }

    /// The pull that a part of it stands beside, as she has it.
    fn pull_of(&self, step: StepId) -> Option<(StepId, f64)> {
        let pull = match step {
            StepId::Across(force) | StepId::PartOf(force, _) | StepId::Moment(force) => {
                StepId::Pull(force)
            }
            _ => return None,
        };
        Some((pull, self.state.standing.get(&pull)?.value))
    }

    /// False for a multiple of the unknown while the unknown is not found.
    pub(super) fn is_number(&self, step: StepId) -> bool {
        if step.is_general() {
            let found = |id: &StepId| self.state.reached.contains_key(id);
            return step.is_unknown() || self.key.open_in(step).iter().all(found);
        }
        let unknown = self.key.unknown();
        let of_unknown = match (step, unknown) {
            (StepId::Across(force), Some(unknown)) => StepId::Pull(force) == unknown,
            _ => false,
        };
        !of_unknown || unknown.is_some_and(|unknown| self.state.reached.contains_key(&unknown))
    }

    /// What is asked now, and whether it may be left.
    pub(super) fn question(&self) -> Prose {
        if let Some(guess) = self.guess() {
            return self.guess_question(guess);
        }
        if self.is_free() && self.state.course == Course::On {
            return self.question_freely();
        }
        let question = self.bare_question();
        match self.may_end() && self.reason_step().is_none() {
            true => question.then(self.words.say("question.may-end", &[])),
            false => question,
        }
    }

    fn bare_question(&self) -> Prose {
        if let Some(reason) = self.reason_question() {
            return reason;
        }
        let Some(asked) = self.asked() else {
            let key = match self.is_well_worked() {
                true => "question.finished-well",
                false => "question.finished",
            };
            return self.words.say(key, &[]);
        };
        if self.is_general() {
            return crate::hint::general_question(&self.words, &self.key, asked);
        }
        let noun = asked
            .force()
            .and_then(|force| self.problem.force(force))
            .map_or_else(String::new, |force| force.noun.to_owned());
        let symbol = self
            .key
            .step(asked)
            .map_or_else(String::new, |step| step.symbol.shown());
        let force = asked
            .force()
            .and_then(|force| self.problem.force(force))
            .map_or_else(String::new, |force| force.symbol.shown());
        let slots = [
            ("noun", Slot::Word(noun)),
            ("symbol", Slot::Name(symbol)),
            ("force", Slot::Name(force)),
            ("body", Slot::Word(self.problem.body().noun.clone())),
            ("title", Slot::Word(self.title(asked))),
            ("pivot", Slot::Word(self.pivot_noun())),
        ];
        let pending_key = self
            .pending_asks()
            .map(|asks| format!("question.forces-{asks}"));
        let key = match asked {
            StepId::Forces if pending_key.is_some() => pending_key.as_deref().unwrap_or_default(),
            StepId::Forces if !self.state.named.is_empty() => "question.forces-more",
            StepId::Across(force) if self.is_pull(force) => "question.across-pull",
            StepId::Reaction(_, Part::Along(Axis::Vertical)) if self.upright_only() => {
                "question.reaction-only"
            }
            other => {
                let kind = crate::hint::kind_of_force(&self.problem, other);
                return self.words.say(&format!("question.{kind}"), &slots);
            }
        };
        let pending = self
            .state
            .pending
            .first()
            .map(|pending| self.force_title(pending.force))
            .unwrap_or_default();
        let mut slots = slots.to_vec();
        slots.push(("pending", Slot::Word(pending)));
        slots.push(("named", Slot::Word(self.state.named.len().to_string())));
        self.words.say(key, &slots)
    }

    pub(super) fn is_pull(&self, force: ForceId) -> bool {
        self.key.step(StepId::Pull(force)).is_some()
    }

    fn upright_only(&self) -> bool {
        self.key.step(StepId::ForceSum(Axis::Horizontal)).is_none()
    }

    pub(super) fn pivot_noun(&self) -> String {
        self.problem
            .supports()
            .iter()
            .find(|support| support.at == self.key.pivot)
            .map_or_else(String::new, |support| support.noun.clone())
    }

    pub(super) fn no_ratios(&self) -> bool {
        !self
            .key
            .steps
            .iter()
            .any(|step| matches!(step.id, StepId::Across(_)))
    }

    fn name_views(&self) -> Vec<NameView> {
        let (names, own_names) = (self.names(), self.own_values());
        let board = self.board(&names, &own_names);
        let (mut views, mut own_views) = (Vec::new(), Vec::new());
        for (index, name) in names.vocabulary().names.iter().enumerate() {
            let Some(role) = names.role(crate::reading::NameId(index)) else {
                continue;
            };
            let (meaning, value) = match role {
                NameRole::Given(id) => {
                    let given = self.problem.given(id);
                    (self.given_meaning(id), Some(given.written.clone()))
                }
                NameRole::Gravity => {
                    let g = crate::units::number_text(self.problem.gravity());
                    (self.words.word("name.gravity"), Some(format!("{g} m/s²")))
                }
                NameRole::Step(step) => {
                    let forces_said = self.state.reached.contains_key(&StepId::Forces);
                    let asked = self.key.step(step).is_some_and(|step| step.asked);
                    let forces_said = forces_said || self.is_general();
                    if !forces_said || !asked && self.value_of(step).is_none() {
                        continue;
                    }
                    let now = self.at_hand().and_then(|asked| self.key.rank(asked));
                    let free = self.is_free() && !self.is_general();
                    let near = self.state.reached.contains_key(&step)
                        || self.key.rank(step) <= now
                        || matches!(step, StepId::Pull(_)) && now >= self.first_pull_use()
                        || self.is_near(step);
                    let near = match free {
                        true => self.is_at_hand_freely(step),
                        false => near,
                    };
                    if !near {
                        continue;
                    }
                    let value = self
                        .value_of(step)
                        .map(|value| value_text(value, name.dimension, self.problem.figures()));
                    (self.title(step), value)
                }
                NameRole::Own(own) => {
                    let own = own_names.get(own).filter(|own| self.may_tell(own));
                    let value = own.zip(board.name_value(role)).map(|(own, value)| {
                        value_text(value, own.dimension, self.problem.figures())
                    });
                    (self.words.word("name.own"), value)
                }
            };
            let view = NameView {
                shown: name.symbol.shown(),
                typed: name.symbol.typed(),
                meaning,
                value,
            };
            match role {
                NameRole::Own(_) => own_views.push(view),
                _ => views.push(view),
            }
        }
        views.append(&mut own_views);
        views
    }

    /// True unless a name of the learner's own would tell the unknown, or a weight, before it is
    /// found.
    pub(super) fn may_tell(&self, own: &OwnName) -> bool {
        let found = |step: &StepId| self.state.standing.contains_key(step);
        let mut weights = self.key.asked().map(|step| step.id);
        if own.of_open_weight && !weights.all(|id| !id.is_weight() || found(&id)) {
            return false;
        }
        !own.of_unknown
            || self
                .state
                .standing
                .keys()
                .any(|step| matches!(step, StepId::Pull(_)))
    }

    /// The first step at which the unknown's name is needed.
    fn first_pull_use(&self) -> Option<usize> {
        let pull = self.key.steps.iter().find_map(|step| match step.id {
            StepId::Pull(force) => Some(force),
            _ => None,
        })?;
        self.key
            .rank(StepId::Across(pull))
            .or_else(|| self.key.rank(StepId::MomentSum))
    }

    /// The diagram's stages so far, the present one last. Only what was said or found is drawn.
    fn stages(&self) -> Vec<Marks> {
        if let Some(sheet) = &self.sheet {
            return self.sheet_stages(sheet);
        }
        let mut stages = vec![Marks {
            stage: Stage::Scene,
            givens: true,
            ..Marks::default()
        }];
        let drawn = self.forces_in_sight();
        let pivot: Option<Place> = self.pivot_drawn();
        if drawn.is_empty() && pivot.is_none() {
            return stages;
        }
        let forces: Vec<ForceMark> = drawn.iter().map(|id| self.force_mark(*id)).collect();
        let plain = Marks {
            stage: Stage::Forces,
            forces: forces.clone(),
            pivot,
            // While forces are still asked, what they come from stays in sight.
            site: self.at_hand() == Some(StepId::Forces),
            ..Marks::default()
        };
        stages.push(plain.clone());
        // Values would crowd these drawings; they stand among the names.
        let bare: Vec<ForceMark> = forces.iter().map(|mark| self.bare(mark)).collect();
        let is_drawn = |force: &ForceId| drawn.contains(force);
        let mut angles = self.angle_marks();
        angles.retain(|mark| is_drawn(&mark.force));
        let asks_angle = matches!(self.at_hand(), Some(StepId::Angle(_))) && !self.is_free();
        if !angles.is_empty() || asks_angle {
            stages.push(Marks {
                stage: Stage::Angles,
                forces: bare.clone(),
                given_angles: true,
                angles: angles.clone(),
                ..plain.clone()
            });
        }
        let mut components = self.component_marks();
        components.retain(|mark| is_drawn(&mark.force));
        if !components.is_empty() {
            stages.push(Marks {
                stage: Stage::Components,
                forces: bare,
                components: components.clone(),
                angles: Vec::new(),
                ..plain.clone()
            });
        }
        // The lever is drawn about the point of the steps, and about no other.
        let turning = self.turns() && pivot.is_none_or(|pivot| pivot == self.key.pivot);
        if turning {
            let mut distances = self.distance_marks();
            distances.retain(|mark| is_drawn(&mark.force));
            stages.push(Marks {
                stage: Stage::Turning,
                // A force through the pivot does not turn the body.
                forces: forces
                    .iter()
                    .filter(|mark| self.key.step(StepId::Distance(mark.force)).is_some())
                    .cloned()
                    .collect(),
                components,
                distances,
                ..plain.clone()
            });
        }
        let pull_found = self.key.steps.iter().any(|step| {
            matches!(step.id, StepId::Pull(_)) && self.state.reached.contains_key(&step.id)
        });
        if turning && pull_found {
            stages.push(plain);
        }
        self.light_triangle(&mut stages);
        stages
    }

    /// A force's mark as it stood before its value, and the way of an unknown one, were found.
    fn bare(&self, mark: &ForceMark) -> ForceMark {
        let symbol = self.problem.force(mark.force);
        ForceMark {
            label: symbol.map_or_else(String::new, |force| force.symbol.shown()),
            force: mark.force,
            direction: None,
        }
    }

    fn force_mark(&self, id: ForceId) -> ForceMark {
        let Some(force) = self.problem.force(id) else {
            return ForceMark {
                force: id,
                label: String::new(),
                direction: None,
            };
        };
        let value = [
            StepId::Weight(id),
            StepId::Pull(id),
            StepId::Reaction(id, Part::Size),
        ]
        .into_iter()
        .chain(
            self.upright_only()
                .then_some(StepId::Reaction(id, Part::Along(Axis::Vertical))),
        )
        .filter(|step| self.key.step(*step).is_some())
        .find_map(|step| Some((self.value_of(step)?, self.key.step(step)?.dimension)));
        let label = match value {
            Some((value, dimension)) => {
                // A pull below zero says so; of any other force the arrow or the sum has the sign.
                let value = match self.key.step(StepId::Pull(id)) {
                    Some(_) => value,
                    None => value.abs(),
                };
                format!(
                    "{} = {}",
                    force.symbol.shown(),
                    value_text(value, dimension, self.problem.figures())
                )
            }
            None => force.symbol.shown(),
        };
        let direction = (force.acting == Acting::Anywhere)
            .then(|| self.own_direction(id))
            .flatten();
        ForceMark {
            force: id,
            label,
            direction,
        }
    }

    /// The way of a support's force as the learner's own parts give it; `None` until all stand.
    fn own_direction(&self, id: ForceId) -> Option<f64> {
        let part = |axis: Axis| {
            let step = StepId::Reaction(id, Part::Along(axis));
            match self.key.step(step) {
                // Where nothing acts along an axis there is no part along it.
                None => Some(0.0),
                Some(_) => self.state.standing.get(&step).map(|own| own.function[0]),
            }
        };
        let (x, y) = (part(Axis::Horizontal)?, part(Axis::Vertical)?);
        Some(libm::atan2(y, x))
    }

    fn angle_marks(&self) -> Vec<AngleMark> {
        self.key
            .steps
            .iter()
            .filter_map(|step| match step.id {
                StepId::Angle(force) => {
                    let value = self.value_of(step.id)?;
                    let label = format!(
                        "{} = {}",
                        step.symbol.shown(),
                        value_text(value, step.dimension, 3)
                    );
                    Some(AngleMark {
                        force,
                        label,
                        size: Some(value),
                    })
                }
                _ => None,
            })
            .collect()
    }

    fn component_marks(&self) -> Vec<ComponentMark> {
        self.key
            .steps
            .iter()
            .filter_map(|step| match step.id {
                StepId::Across(force) if self.state.reached.contains_key(&step.id) => {
                    let label = match self.value_of(step.id) {
                        Some(value) => {
                            format!(
                                "{} = {}",
                                step.symbol.shown(),
                                value_text(value, step.dimension, self.problem.figures())
                            )
                        }
                        None => step.symbol.shown(),
                    };
                    Some(ComponentMark { force, label })
                }
                _ => None,
            })
            .collect()
    }

    /// Distances from the pivot, as printed or as a part of the length. Before the balance is
    /// written, only those that the statement gives: the others are the learner's to find.
    fn distance_marks(&self) -> Vec<DistanceMark> {
        self.key
            .steps
            .iter()
            .filter_map(|step| match step.id {
                StepId::Distance(force) => {
                    let formula: Formula = self.key.formula(step.id)?;
                    let given = matches!(
                        self.problem.force(force)?.at,
                        Place::At(_) | Place::Tip | Place::Foot
                    );
                    if !given && !self.state.reached.contains_key(&StepId::MomentSum) {
                        return None;
                    }
                    let value = self.key.value(step.id, self.sampling.own(), &Pins::new())?;
                    let name = formula_names(&self.problem, &self.key, &formula);
                    let metres = self.problem.length_text(value);
                    Some(DistanceMark {
                        force,
                        label: format!("{name} = {metres}"),
                    })
                }
                _ => None,
            })
            .collect()
    }

    /// True once the session has ended with its last step.
    pub(super) fn is_finished(&self) -> bool {
        self.state.course == Course::Finished
    }
}
