//! The class profile: what a teacher sets for a class, as one JSON file.
//!
//! ```text
//! {"leverwright": 1, "class": "10b", "g": "9.81 m/s^2", "figures": 3, "missing_unit": "asked"}
//! ```
//! It changes problems as they are drawn and what is asked of answers; of a problem that is begun
//! nothing changes, for that keeps its own. `lessons/README.md` tells what each field means.

use super::decode::{Fields, Item, Report, decode};
use super::family::{Lesson, Variant};
use super::fault::Fault;
use super::model::REFERENCES;
use super::quantity::{Want, read_amount};
use super::read::check_form;
use crate::problem::{
    Asking, Direction, FiguresAsked, Flaw, Parts, Problem, Reference, Tilt, UnitAsked,
};
use crate::text::{Decimal, Language, Settings, Symbols, Turning};

/// The fields of a profile.
const FIELDS: &[&str] = &[
    "leverwright",
    "class",
    "g",
    "accepted_g",
    "figures",
    "figures_rule",
    "missing_unit",
    "angles_from",
    "display",
];
/// The fields of its display.
const DISPLAY: &[&str] = &["turning", "decimal", "symbols", "language"];

/// The longest name of a class, in characters.
const LONGEST_NAME: usize = 60;

/// What a teacher sets for a class. A profile without fields changes nothing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ClassProfile {
    /// What the class is called.
    pub name: String,
    /// The size of the acceleration of free fall with which problems are told, in m/s²; none: each
    /// lesson's own.
    pub gravity: Option<f64>,
    /// Other sizes that count as right, in m/s². Only with `gravity`.
    pub accepted_gravity: Vec<f64>,
    /// Significant figures asked; none: each lesson's own.
    pub figures: Option<u8>,
    /// What is asked of answers beside their value.
    pub asking: Asking,
    /// The line from which given angles are measured; none: either.
    pub angles_from: Option<Reference>,
    /// How things are shown to who has not chosen.
    pub display: Settings,
}

/// Reads a class profile.
///
/// # Errors
/// Every fault of the file at once, as for [`super::parse_lesson`].
pub fn parse_class(json: &str) -> Result<ClassProfile, Vec<Fault>> {
    decode(json, read_class)
}

/// Fields that a lesson or a problem has and a profile has not.
const OTHERS: [&str; 8] = [
    "variants",
    "model",
    "system",
    "id",
    "version",
    "texts",
    "text",
    "builds_on",
];

/// True for the text of a class profile: an object with a `class`, or with other fields of a
/// profile and none of a lesson or a problem.
pub fn is_class(json: &str) -> bool {
    let has = decode(json, |root, _| {
        let object = root.value.as_object()?;
        let has = |field: &&str| object.get(field).is_some();
        if OTHERS[..3].iter().any(has) {
            return Some(false);
        }
        let of_profile = FIELDS[2..].iter().any(has);
        Some(has(&"class") || of_profile && !OTHERS.iter().any(has))
    });
    has == Ok(true)
}

fn read_class(root: &Item<'_>, report: &mut Report) -> Option<ClassProfile> {
    let fields = root.fields(FIELDS, report)?;
    check_form(&fields, report)?;
    let name = fields
        .required("class", "what the class is called, such as \"10b\"", report)
        .and_then(|item| read_name(&item, report));
    let gravity = fields.optional("g").map(|item| read_gravity(&item, report));
    let accepted = fields.optional("accepted_g").map(|item| {
        if gravity.is_none() {
            let why = "what else counts as right needs a \"g\" beside it; write both".to_owned();
            report.add(&item, super::fault::FaultKind::Contradiction { why });
        }
        let items = item.elements("accelerations", (0, 10), report)?;
        items
            .iter()
            .map(|item| read_gravity(item, report))
            .collect::<Option<Vec<_>>>()
    });
    let figures = fields
        .optional("figures")
        .map(|item| item.whole((2, 4), report));
    let figures_rule = word(&fields, "figures_rule", FiguresAsked::WORDS, report);
    let unit = word(&fields, "missing_unit", UnitAsked::WORDS, report);
    let angles = word(&fields, "angles_from", &angle_words(), report);
    let display = fields
        .optional("display")
        .map(|item| read_display(&item, report));
    let figures = given(figures)?.map(|figures| figures as u8);
    // Who says how many means it.
    let usual = figures.map_or(FiguresAsked::Usual, |_| FiguresAsked::Asked);
    let rule = given(figures_rule)?.unwrap_or(usual);
    Some(ClassProfile {
        name: name?,
        gravity: given(gravity)?,
        accepted_gravity: given(accepted)?.unwrap_or_default(),
        figures,
        asking: Asking {
            unit: given(unit)?.unwrap_or_default(),
            figures: rule,
        },
        angles_from: given(angles)?.flatten(),
        display: given(display)?.unwrap_or_default(),
    })
}

/// A field that may be left out: none where it could not be read.
fn given<T>(field: Option<Option<T>>) -> Option<Option<T>> {
    match field {
        Some(read) => read.map(Some),
        None => Some(None),
    }
}

fn word<T: Copy>(
    fields: &Fields<'_>,
    name: &str,
    words: &[(&str, T)],
    report: &mut Report,
) -> Option<Option<T>> {
    let item = fields.optional(name)?;
    Some(item.word(words, report))
}

fn angle_words() -> Vec<(&'static str, Option<Reference>)> {
    let one = REFERENCES.iter().map(|(word, from)| (*word, Some(*from)));
    one.chain([("either", None)]).collect()
}

fn read_name(item: &Item<'_>, report: &mut Report) -> Option<String> {
    let expected = "what the class is called, in at most 60 characters";
    let name = item.said(expected, report)?;
    if name.chars().count() > LONGEST_NAME {
        item.expected(expected, report);
        return None;
    }
    Some(name.trim().to_owned())
}

fn read_gravity(item: &Item<'_>, report: &mut Report) -> Option<f64> {
    read_amount(item, Want::ClassGravity, report).map(|amount| amount.value)
}

fn read_display(item: &Item<'_>, report: &mut Report) -> Option<Settings> {
    let fields = item.fields(DISPLAY, report)?;
    let turning = [("moment", Turning::Moment), ("torque", Turning::Torque)];
    let decimal = [
        ("found", Decimal::Found),
        ("point", Decimal::Point),
        ("comma", Decimal::Comma),
    ];
    let symbols = [
        ("found", Symbols::Found),
        ("unicode", Symbols::Unicode),
        ("ascii", Symbols::Ascii),
    ];
    let turning = word(&fields, "turning", &turning, report);
    let decimal = word(&fields, "decimal", &decimal, report);
    let languages: Vec<(&str, Language)> = Language::all()
        .map(|language| (language.tag(), language))
        .collect();
    let symbols = word(&fields, "symbols", &symbols, report);
    let language = word(&fields, "language", &languages, report);
    Some(Settings {
        turning: given(turning)?.unwrap_or_default(),
        decimal: given(decimal)?.unwrap_or_default(),
        symbols: given(symbols)?.unwrap_or_default(),
        language: given(language)?,
        ..Settings::default()
    })
}

impl ClassProfile {
    /// A lesson as the class has it: its g, its figures, its angles. Its codes stay those of the
    /// lesson.
    pub fn lesson(&self, mut lesson: Lesson) -> Lesson {
        for variant in &mut lesson.variants {
            self.put_into(&mut variant.parts);
        }
        if let Some(gravity) = self.gravity {
            lesson.gravity = gravity;
        }
        lesson.figures = self.figures.unwrap_or(lesson.figures);
        lesson.angles_from = self.angles_from;
        lesson
    }

    /// A problem that was built in the class.
    ///
    /// # Errors
    /// None for a problem without flaws; they are told as for [`Problem::new`].
    pub fn problem(&self, problem: &Problem) -> Result<Problem, Vec<Flaw>> {
        let mut parts = problem.parts().clone();
        self.put_into(&mut parts);
        Problem::new(parts)
    }

    fn put_into(&self, parts: &mut Parts) {
        if let Some(gravity) = self.gravity {
            parts.gravity = gravity;
            parts.accepted_gravity.clone_from(&self.accepted_gravity);
        }
        parts.figures = self.figures.unwrap_or(parts.figures);
    }
}

/// A lesson with the g and the figures of one of its problems, which may have been begun in another
/// class.
pub fn lesson_as_begun(lesson: &Lesson, problem: &Problem) -> Lesson {
    let profile = ClassProfile {
        gravity: Some(problem.gravity()),
        accepted_gravity: problem.accepted_gravity().to_vec(),
        figures: Some(problem.figures()),
        ..ClassProfile::default()
    };
    profile.lesson(lesson.clone())
}

/// True if no angle of a variant is measured from another line than this.
pub(super) fn measures_from(variant: &Variant, from: Reference) -> bool {
    let tilt = match variant.parts.body.tilt {
        Tilt::Level => true,
        Tilt::Rising { from: its, .. } => its == from,
    };
    let rope = |direction: Direction| match direction {
        Direction::Oblique { from: its, .. } => its == from,
        _ => true,
    };
    tilt && variant.parts.ropes.iter().all(|one| rope(one.direction))
}
