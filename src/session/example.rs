//! How an answer may look: a form, with other numbers than this problem's.

use super::Session;
use crate::key::{Pins, StepId};
use crate::text::{Prose, Slot};
use crate::units::{Dimension, figures_text};

/// A number this near to one of the problem, as a share of it, looks like it.
const ALIKE: f64 = 0.03;

impl Session {
    /// How an answer to what is asked may look.
    pub(super) fn example(&self) -> Prose {
        if self.guess().is_some() {
            return self.words.say("guess.example", &[]);
        }
        if self.is_free() && !self.is_finished() {
            return self.words.say("example.freely", &[]);
        }
        if self.reason_step().is_some() {
            return self.words.say("worked.example", &[]);
        }
        let Some(asked) = self.asked() else {
            return Prose::default();
        };
        if self.is_general() {
            return self.general_example(asked);
        }
        let kind = crate::hint::kind_word(asked);
        let key = match asked {
            StepId::Forces if self.pending_asks().is_some() => {
                let asks = self.pending_asks().unwrap_or_default();
                format!("example.forces-{}", asks.trim_end_matches("-open"))
            }
            StepId::Across(force) if self.is_pull(force) => "example.across-pull".to_owned(),
            StepId::MomentSum if self.no_ratios() => "example.moment-sum-level".to_owned(),
            _ => format!("example.{kind}"),
        };
        let force = asked
            .force()
            .and_then(|force| self.problem.force(force))
            .map_or_else(String::new, |force| force.symbol.typed());
        let mut slots = self.example_numbers();
        slots.push(("force", Slot::Key(force)));
        slots.push(("body", Slot::Key(self.problem.body().noun.clone())));
        self.words.say(&key, &slots)
    }

    fn general_example(&self, asked: StepId) -> Prose {
        let symbol = self.key.step(asked).map(|step| step.symbol.typed());
        let mut slots = self.example_numbers();
        slots.push(("symbol", Slot::Key(symbol.unwrap_or_default())));
        slots.push(("unit", Slot::Key(self.unit_of(asked))));
        let kind = crate::hint::general_example(&self.key, asked);
        self.words.say(&format!("general.example.{kind}"), &slots)
    }

    fn unit_of(&self, asked: StepId) -> String {
        let dimension = self.key.step(asked).map(|step| step.dimension);
        let unit = dimension.and_then(crate::units::unit_for);
        unit.map_or_else(String::new, |unit| unit.symbol.to_owned())
    }

    /// Numbers for an example.
    pub(super) fn example_numbers(&self) -> Vec<(&'static str, Slot)> {
        let mass = self.example_mass();
        let weight = figures_text(f64::from(mass) * 9.8, 3);
        vec![
            ("angle", Slot::Key(self.example_angle().to_string())),
            ("mass", Slot::Key(mass.to_string())),
            ("weight", Slot::Key(weight)),
            ("size", Slot::Key(self.example_size().to_string())),
        ]
    }

    /// A mass for an example that is none of this problem's; nor is its weight a force of it.
    fn example_mass(&self) -> u32 {
        let masses = self.values_of(Dimension::MASS);
        let forces = self.values_of(Dimension::FORCE);
        let free = |mass: &u32| {
            let mass = f64::from(*mass);
            masses.iter().all(|known| (known - mass).abs() > 0.5) && unlike(&forces, mass * 9.8)
        };
        let usual = [15, 25, 35, 45, 95, 7];
        usual.into_iter().chain(101..200).find(free).unwrap_or(7)
    }

    /// A force for an example that is none of this problem's, in newtons.
    fn example_size(&self) -> u32 {
        let forces = self.values_of(Dimension::FORCE);
        let free = |size: &u32| unlike(&forces, f64::from(*size));
        let mut usual = (0..40).map(|step| 250 + 70 * step);
        usual.find(free).unwrap_or(250)
    }

    /// An angle for an example that is none of this problem's.
    fn example_angle(&self) -> u32 {
        let known: Vec<f64> = self
            .values_of(Dimension::ANGLE)
            .into_iter()
            .map(f64::to_degrees)
            .collect();
        let free = |degrees: &u32| {
            let degrees = f64::from(*degrees);
            known
                .iter()
                .all(|angle| (angle - degrees).abs() > 2.0 && (90.0 - angle - degrees).abs() > 2.0)
        };
        (31..60).find(free).unwrap_or(45)
    }

    /// The sizes of all givens and steps of a dimension, in SI units.
    fn values_of(&self, dimension: Dimension) -> Vec<f64> {
        let steps = self.key.steps.iter();
        let steps = steps
            .filter(|step| step.dimension == dimension)
            .filter_map(|step| self.key.value(step.id, self.sampling.own(), &Pins::new()));
        let givens = self.problem.givens().iter();
        let givens = givens
            .filter(|given| given.dimension == dimension)
            .map(|given| given.value);
        steps.chain(givens).map(f64::abs).collect()
    }
}

/// True if a number looks like none of these.
fn unlike(known: &[f64], number: f64) -> bool {
    known
        .iter()
        .all(|known| (known - number).abs() > ALIKE * number)
}
