//! After the last step: the whole working by the learner's own way, and by another.

use super::Session;
use super::turn::{Progress, Worked, WorkedLine};
use super::working_line::working_line;
use crate::hint::{is_said_again, told as step_told};
use crate::key::StepId;
use crate::system::{Spot, System};
use crate::text::{Piece, Prose, Slot, Tag};
use crate::working::{Method, derive, settle, told};

/// A way to work a problem.
#[derive(Clone, PartialEq)]
enum Way {
    /// As the guided walk asks.
    Walk,
    /// By a method, about the pivot that a teacher would take.
    By(Method),
    /// About where this force acts.
    About(StepId),
}

impl Session {
    /// The whole working by the learner's own way, then by another one, where there is one; nothing
    /// before the end.
    pub(super) fn keys(&self) -> Vec<Worked> {
        if !self.is_finished() {
            return Vec::new();
        }
        let own = self.own_way();
        let others = match own {
            Way::Walk => self.other_ways(),
            _ => vec![Way::Walk],
        };
        let plain = self.plainly();
        let others = others.iter().filter_map(|way| self.worked(way, false));
        let mut others = others.filter(|other| Some(&other.lines) != plain.as_ref());
        let other = others.next();
        self.worked(&own, true).into_iter().chain(other).collect()
    }

    /// The learner's own way: the walk's, or lever arms where a free working of hers did without
    /// components across the body.
    fn own_way(&self) -> Way {
        let reached = |id: StepId| {
            let progress = self.state.reached.get(&id).map(|(progress, _)| *progress);
            progress == Some(Progress::Done) && !self.state.done_without.contains(&id)
        };
        let across = |id: &StepId| matches!(id, StepId::Across(_));
        let mut components = self.key.asked().map(|step| step.id).filter(across);
        let has_any = !self.no_ratios();
        match self.is_free() && !self.is_general() && has_any && !components.any(reached) {
            true => Way::By(Method::LeverArms),
            false => Way::Walk,
        }
    }

    /// Other ways than the walk's, the most telling first.
    fn other_ways(&self) -> Vec<Way> {
        let arms = Way::By(Method::LeverArms);
        let coordinates = Way::By(Method::Coordinates);
        if self.is_general() {
            return vec![arms, coordinates];
        }
        // With upright forces on a level body an arm is the distance itself.
        match (self.no_ratios(), self.key.unknown()) {
            (true, Some(pull)) => vec![Way::About(pull), arms],
            _ => vec![arms, coordinates],
        }
    }

    /// The working of a general problem by the method of its walk, for comparison.
    fn plainly(&self) -> Option<Vec<WorkedLine>> {
        let system = self.system.as_deref()?;
        self.lines_by(system, Method::Components, None)
    }

    fn worked(&self, way: &Way, own: bool) -> Option<Worked> {
        let lines = match way {
            Way::Walk => self.walked(),
            Way::By(method) => self.lines_by(&self.bodies(), *method, None)?,
            Way::About(pull) => {
                let system = self.bodies();
                let spot = self.spot_of(&system, *pull)?;
                self.lines_by(&system, Method::Components, Some(&spot))?
            }
        };
        // What was shown as an example throughout is nobody's own way.
        let shown = self.has_example() && !self.has_answered();
        if own && (self.is_general() || shown) {
            let title = self.words.say("summary.key", &[]);
            return Some(Worked { title, lines });
        }
        let key = match own {
            true => "summary.key.own",
            false => "summary.key.other",
        };
        let slots = [("way", Slot::Prose(self.way_told(way)))];
        let title = self.words.say(key, &slots);
        Some(Worked { title, lines })
    }

    fn way_told(&self, way: &Way) -> Prose {
        let noun = |step: &StepId| {
            let force = step.force().and_then(|force| self.problem.force(force));
            force.map_or_else(String::new, |force| force.noun.to_owned())
        };
        let (key, noun) = match way {
            Way::Walk if self.no_ratios() => ("summary.way.about", self.pivot_noun()),
            Way::Walk => ("summary.way.components", self.problem.body().noun.clone()),
            Way::By(Method::LeverArms) => ("summary.way.arms", String::new()),
            Way::By(_) => ("summary.way.coordinates", String::new()),
            Way::About(pull) => ("summary.way.about", noun(pull)),
        };
        self.words.say(key, &[("noun", Slot::Word(noun))])
    }

    /// The steps that the walk asks for.
    fn walked(&self) -> Vec<WorkedLine> {
        let case = self.case();
        let said = |id: &StepId| matches!(id, StepId::Forces | StepId::Pivot);
        let steps = self.key.asked().map(|step| step.id);
        let steps = steps.filter(|id| !said(id) && !is_said_again(&case, *id));
        let line = |id: StepId| WorkedLine {
            heading: false,
            told: value(step_told(&self.words, &case, id)),
        };
        steps.map(line).collect()
    }

    fn bodies(&self) -> System {
        let general = self.system.as_deref().cloned();
        general.unwrap_or_else(|| System::of(&self.problem))
    }

    /// Where a force of a lesson's problem acts.
    fn spot_of(&self, system: &System, step: StepId) -> Option<Spot> {
        let force = self.problem.force(step.force()?)?;
        let acts = system.acts();
        let act = acts.iter().find(|act| act.symbol == force.symbol)?;
        act.on.first().map(|effect| effect.at.clone())
    }

    fn lines_by(
        &self,
        system: &System,
        method: Method,
        pivot: Option<&Spot>,
    ) -> Option<Vec<WorkedLine>> {
        let settled = settle(system).ok()?;
        let working = derive(system, &settled.values, method, pivot).ok()?;
        let lines = told(system, &working, &settled.values).into_iter();
        let written = lines.map(|line| working_line(system, line, &self.words));
        let lines: Vec<String> = written
            .flat_map(|text| text.lines().map(str::to_owned).collect::<Vec<_>>())
            .collect();
        let line = |text: &String| {
            let heading = !text.starts_with(' ');
            let said = text.trim().to_owned();
            WorkedLine {
                heading,
                told: if heading {
                    Prose::plain(said)
                } else {
                    value(said)
                },
            }
        };
        Some(lines.iter().map(line).collect())
    }
}

fn value(text: String) -> Prose {
    Prose(vec![Piece {
        tag: Tag::Value,
        text,
    }])
}
