//! The promise: how a learner's choices for the display stand in a file, one per learner.
//!
//! ```text
//! {"version":1,"turning":"torque","decimal":"comma","symbols":"ascii","slope":"line","language":"de"}
//! ```
//! `turning` is `moment` or `torque`, `decimal` is `found` (as the language has it), `point` or
//! `comma`, `symbols` is `found` (as the terminal says), `unicode` or `ascii`, `slope` is `unasked`,
//! `line` or `characters`, `language` is the tag of a language; without it, and with a tag that this
//! program does not know, that of the surroundings counts. Any other field that is missing stands
//! for the first of these; fields that are not known are passed over. A file that
//! cannot be read stands for the first of all, is told of, and is written anew with the next choice.

use super::learner::write_whole;
use super::trouble::{Doing, StoreTrouble};
use crate::text::{Decimal, Language, Prose, Settings, Slope, Slot, Symbols, Turning, Words};
use serde::{Deserialize, Serialize};
use std::fs;
use std::path::{Path, PathBuf};

/// The file in a learner's folder.
const SETTINGS_FILE: &str = "settings.json";

/// Version of the format that this program writes.
const VERSION: u32 = 1;

/// A file of settings that could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnreadSettings {
    /// The file.
    pub place: PathBuf,
}

impl UnreadSettings {
    /// What is told to the learner.
    pub fn say(&self, words: &Words) -> Prose {
        let place = Slot::Value(self.place.display().to_string());
        words.say("store.note.settings", &[("place", place)])
    }
}

#[derive(Serialize, Deserialize)]
struct Shape {
    version: u32,
    #[serde(default)]
    turning: TurningShape,
    #[serde(default)]
    decimal: DecimalShape,
    #[serde(default)]
    symbols: SymbolsShape,
    #[serde(default)]
    slope: SlopeShape,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    language: Option<String>,
}

#[derive(Clone, Copy, Default, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum TurningShape {
    #[default]
    Moment,
    Torque,
}

#[derive(Clone, Copy, Default, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum DecimalShape {
    #[default]
    Found,
    Point,
    Comma,
}

#[derive(Clone, Copy, Default, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum SymbolsShape {
    #[default]
    Found,
    Unicode,
    Ascii,
}

#[derive(Clone, Copy, Default, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum SlopeShape {
    #[default]
    Unasked,
    Line,
    Characters,
}

/// The settings in a learner's folder; none where there is no file, or none that can be read.
pub(super) fn read(folder: &Path) -> (Option<Settings>, Option<UnreadSettings>) {
    let place = folder.join(SETTINGS_FILE);
    if !place.exists() {
        return (None, None);
    }
    // A pipe of that name would keep the program waiting for ever.
    let text = place.is_file().then(|| fs::read_to_string(&place).ok());
    let shape = text
        .flatten()
        .and_then(|text| serde_json::from_str::<Shape>(&text).ok());
    match shape {
        Some(shape) => (Some(settings(&shape)), None),
        None => (None, Some(UnreadSettings { place })),
    }
}

/// Writes the settings into a learner's folder.
pub(super) fn write(folder: &Path, settings: Settings) -> Result<(), StoreTrouble> {
    let text = serde_json::to_string(&shape(settings)).unwrap_or_default() + "\n";
    write_whole(folder, SETTINGS_FILE, &text).map_err(|error| {
        StoreTrouble::new(Doing::WriteSettings, &folder.join(SETTINGS_FILE), &error)
    })
}

fn settings(shape: &Shape) -> Settings {
    Settings {
        turning: match shape.turning {
            TurningShape::Moment => Turning::Moment,
            TurningShape::Torque => Turning::Torque,
        },
        decimal: match shape.decimal {
            DecimalShape::Found => Decimal::Found,
            DecimalShape::Point => Decimal::Point,
            DecimalShape::Comma => Decimal::Comma,
        },
        symbols: match shape.symbols {
            SymbolsShape::Found => Symbols::Found,
            SymbolsShape::Unicode => Symbols::Unicode,
            SymbolsShape::Ascii => Symbols::Ascii,
        },
        slope: match shape.slope {
            SlopeShape::Unasked => Slope::Unasked,
            SlopeShape::Line => Slope::Line,
            SlopeShape::Characters => Slope::Characters,
        },
        language: shape.language.as_deref().and_then(Language::tagged),
    }
}

fn shape(settings: Settings) -> Shape {
    Shape {
        version: VERSION,
        turning: match settings.turning {
            Turning::Moment => TurningShape::Moment,
            Turning::Torque => TurningShape::Torque,
        },
        decimal: match settings.decimal {
            Decimal::Found => DecimalShape::Found,
            Decimal::Point => DecimalShape::Point,
            Decimal::Comma => DecimalShape::Comma,
        },
        symbols: match settings.symbols {
            Symbols::Found => SymbolsShape::Found,
            Symbols::Unicode => SymbolsShape::Unicode,
            Symbols::Ascii => SymbolsShape::Ascii,
        },
        slope: match settings.slope {
            Slope::Unasked => SlopeShape::Unasked,
            Slope::Line => SlopeShape::Line,
            Slope::Characters => SlopeShape::Characters,
        },
        language: settings.language.map(|language| language.tag().to_owned()),
    }
}
