//! What a force's unit that is no SI unit is: `T = 86.6 kgf`.

use super::turn::Sign;
use super::{Outcome, Session};
use crate::reading::read;
use crate::text::Slot;
use crate::units::{Unit, number_text, to_figures};

/// Such units, each with the words that say what it is. How many newtons it is stands in the table
/// of units.
const UNITS: [(&str, &str); 2] = [("kgf", "unit.kgf"), ("lbf", "unit.lbf")];
/// Figures of what one of a unit is in newtons.
const FIGURES: u8 = 4;

impl Session {
    /// The answer to a line, with a word on the unit in it where it is the first line with that.
    pub(super) fn with_unit_told(&self, line: &str, outcome: Outcome) -> Outcome {
        let judged = outcome.numbered && outcome.sign != Sign::Unclear;
        let told = |unit: &&'static Unit| UNITS.iter().find(|(symbol, _)| *symbol == unit.symbol);
        let units = if judged {
            self.units_in(line)
        } else {
            Vec::new()
        };
        let found = units.iter().find_map(|unit| Some((*unit, told(unit)?.1)));
        let Some((unit, key)) = found else {
            return outcome;
        };
        let before = |text: &str| {
            self.units_in(text)
                .iter()
                .any(|one| one.symbol == unit.symbol)
        };
        if self.state.lines.iter().any(|line| before(&line.text)) {
            return outcome;
        }
        let newtons = number_text(to_figures(unit.factor, FIGURES));
        let word = self.words.say(key, &[("newtons", Slot::Value(newtons))]);
        Outcome {
            message: outcome.message.then(word),
            ..outcome
        }
    }

    /// The units behind the numbers of a line.
    fn units_in(&self, line: &str) -> Vec<&'static Unit> {
        let names = self.names();
        let readings = read(line, names.vocabulary()).unwrap_or_default();
        let sides = readings.first().map(|reading| reading.sides.as_slice());
        let places = sides
            .unwrap_or_default()
            .iter()
            .flat_map(|side| side.literals());
        places.filter_map(|place| place.literal.unit).collect()
    }
}
