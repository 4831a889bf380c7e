//! Reading lesson files and problem files.

use super::decode::{Fields, Item, Report, decode};
use super::family::{Lesson, Variant};
use super::fault::{Fault, FaultKind};
use super::grid::Grid;
use super::model::{MODEL, read_model};
use super::names::lesson_means;
use super::quantity::{Want, read_amount};
use super::wording::{
    check_lesson_words, check_loose_statement, check_problem_words, read_problem_text, read_texts,
};
use super::write::checksum;
use crate::problem::{Flaw, Problem};
use std::collections::BTreeSet;

/// The version of the form that this program reads and writes.
pub(super) const FORM: u32 = 1;

const LESSON: &[&str] = &[
    "leverwright",
    "id",
    "version",
    "builds_on",
    "skills",
    "g",
    "accepted_g",
    "figures",
    "variants",
    "texts",
];
const PROBLEM: &[&str] = &["leverwright", "g", "accepted_g", "figures", "model", "text"];

/// Reads a lesson file.
///
/// # Errors
/// Every fault of the file at once, in the order of the file; a text that is not JSON has one.
///
/// # Example
/// ```
/// let faults = leverwright::lesson::parse_lesson("{\"leverwright\": 2}").unwrap_err();
/// assert_eq!(
///     faults[0].to_string(),
///     "line 1, column 17, leverwright: this program reads form version 1, the file says 2"
/// );
/// ```
pub fn parse_lesson(json: &str) -> Result<Lesson, Vec<Fault>> {
    decode(json, read_lesson)
}

/// Reads a problem file: the form of a lesson with one model, every number fixed and one text.
///
/// # Errors
/// As for [`parse_lesson`].
pub fn parse_problem(json: &str) -> Result<Problem, Vec<Fault>> {
    decode(json, read_problem)
}

fn read_lesson(root: &Item<'_>, report: &mut Report) -> Option<Lesson> {
    let fields = root.fields(LESSON, report)?;
    check_form(&fields, report)?;
    let id = fields
        .required("id", "a short word such as \"mast\"", report)
        .and_then(|item| read_id(&item, report));
    let version = fields
        .required("version", "a whole number, such as 1", report)
        .and_then(|item| item.whole((1, 1_000_000), report));
    let builds_on = words(&fields, "builds_on", report);
    check_own_base(&fields, id.as_deref(), report);
    let skills = words(&fields, "skills", report);
    let common = read_common(&fields, report);
    let items = fields
        .required("variants", "a list of models in brackets", report)
        .and_then(|item| Some((item.elements("models", (1, 200), report)?, item)));
    let texts = fields
        .required(
            "texts",
            "an object with the texts of each language, such as \"en\"",
            report,
        )
        .and_then(|item| read_texts(&item, report));
    let variants: Vec<Option<Variant>> = match &items {
        Some((elements, _)) => elements
            .iter()
            .map(|item| read_variant(item, report))
            .collect(),
        None => vec![None],
    };
    let texts = texts?;
    check_lesson_words(&texts, &variants, report);
    let (elements, variants_item) = items?;
    let (common, mut variants) = (common?, variants.into_iter().collect::<Option<Vec<_>>>()?);
    variants
        .iter_mut()
        .for_each(|variant| common.put_into(variant));
    let grid = grid(&variants_item, &variants, report)?;
    let lesson = Lesson {
        id: id?,
        version: version?,
        builds_on: builds_on?,
        skills: skills?,
        gravity: common.gravity,
        figures: common.figures,
        checksum: checksum(&variants),
        angles_from: None,
        variants,
        texts: texts
            .into_iter()
            .map(|(language, text, _)| (language, text))
            .collect(),
        grid,
    };
    check_problems(&lesson, &elements, report);
    Some(lesson)
}

pub(super) fn read_problem(root: &Item<'_>, report: &mut Report) -> Option<Problem> {
    let fields = root.fields(PROBLEM, report)?;
    check_form(&fields, report)?;
    let common = read_common(&fields, report);
    let model = fields
        .required(
            "model",
            "an object that describes body, supports, ropes and loads",
            report,
        )
        .and_then(|item| {
            let fields = item.fields(&MODEL[..MODEL.len() - 1], report)?;
            read_model(&item, &fields, false, report)
        });
    let text = fields
        .required(
            "text",
            "an object with \"title\", \"statement\" and \"meanings\"",
            report,
        )
        .and_then(|item| read_problem_text(&item, report));
    if let (None, Some((text, statement, item))) = (&model, &text) {
        check_loose_statement(item, text, statement, report);
    }
    let (mut variant, (text, statement, text_item)) = (model?, text?);
    check_problem_words(&text_item, &text, &statement, &variant, report);
    common?.put_into(&mut variant);
    text.tell(&mut variant.parts, &statement);
    match Problem::new(variant.parts) {
        Ok(problem) => Some(problem),
        Err(flaws) => {
            // A place off the body and a name given twice were told where they stand.
            let told = !report.is_empty();
            let again = |flaw: &Flaw| {
                told && matches!(flaw, Flaw::PlaceOffBody { .. } | Flaw::NameTwice { .. })
            };
            flaws
                .into_iter()
                .filter(|flaw| !again(flaw))
                .for_each(|flaw| report.add(root, FaultKind::Flawed(flaw)));
            None
        }
    }
}

/// The problem that the model of a problem file describes, whatever its text tells; `None` where the
/// model itself has a fault.
pub(super) fn read_model_alone(root: &Item<'_>) -> Option<Problem> {
    let fields = root.fields(PROBLEM, &mut Report::default())?;
    let mut report = Report::default();
    let common = read_common(&fields, &mut report)?;
    let item = fields.optional("model")?;
    let parts = item.fields(&MODEL[..MODEL.len() - 1], &mut report)?;
    let mut variant = read_model(&item, &parts, false, &mut report)?;
    common.put_into(&mut variant);
    let sound = report.is_empty();
    Problem::new(variant.parts).ok().filter(|_| sound)
}

/// Another form version is the only fault told of a file that has one.
pub(super) fn check_form(fields: &Fields<'_>, report: &mut Report) -> Option<()> {
    let item = fields.required("leverwright", "1, the version of this form", report)?;
    let version = item.whole((0, u32::MAX), report)?;
    if version != FORM {
        let found = version.to_string();
        report.add(&item, FaultKind::OtherForm { found });
        return None;
    }
    Some(())
}

fn read_id(item: &Item<'_>, report: &mut Report) -> Option<String> {
    let expected = "a word of at most 16 small letters and digits, such as \"mast\"";
    let id = item.text(expected, report)?;
    let good = id.starts_with(|c: char| c.is_ascii_lowercase())
        && id
            .chars()
            .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit())
        && id.len() <= 16;
    if !good {
        item.expected(expected, report);
        return None;
    }
    if let Some(means) = lesson_means(id) {
        let (name, means) = (id.to_owned(), means.to_owned());
        report.add(item, FaultKind::Reserved { name, means });
        return None;
    }
    Some(id.to_owned())
}

/// An optional list of words.
fn words(fields: &Fields<'_>, name: &str, report: &mut Report) -> Option<Vec<String>> {
    let Some(item) = fields.optional(name) else {
        return Some(Vec::new());
    };
    let elements = item.elements("words", (0, 100), report)?;
    elements
        .iter()
        .map(|item| item.said("a word", report).map(str::to_owned))
        .collect()
}

/// No lesson comes before itself, and none is named twice.
fn check_own_base(fields: &Fields<'_>, id: Option<&str>, report: &mut Report) {
    let Some(array) = fields.optional("builds_on") else {
        return;
    };
    // Faults of the list itself are told where it is read.
    let elements = array.elements("words", (0, 100), &mut Report::default());
    let mut seen = BTreeSet::new();
    for item in elements.unwrap_or_default() {
        let Some(base) = item.as_text() else { continue };
        if Some(base) == id {
            item.expected("another lesson than this one", report);
        } else if !seen.insert(base) {
            let why = format!("{base} stands twice in this list; keep one");
            report.add(&item, FaultKind::Contradiction { why });
        }
    }
}

/// What a lesson and a problem say alike.
pub(super) struct Common {
    pub(super) gravity: f64,
    pub(super) accepted_gravity: Vec<f64>,
    pub(super) figures: u8,
}

impl Common {
    fn put_into(&self, variant: &mut Variant) {
        variant.parts.gravity = self.gravity;
        variant
            .parts
            .accepted_gravity
            .clone_from(&self.accepted_gravity);
        variant.parts.figures = self.figures;
    }
}

pub(super) fn read_common(fields: &Fields<'_>, report: &mut Report) -> Option<Common> {
    let gravity = |item: &Item<'_>, report: &mut Report| {
        read_amount(item, Want::Gravity, report).map(|amount| amount.value)
    };
    let g = fields
        .required("g", Want::Gravity.example(), report)
        .and_then(|item| gravity(&item, report));
    let accepted = match fields.optional("accepted_g") {
        None => Some(Vec::new()),
        Some(item) => item
            .elements("accelerations", (0, 10), report)
            .and_then(|items| items.iter().map(|item| gravity(item, report)).collect()),
    };
    let figures = match fields.optional("figures") {
        None => Some(3),
        Some(item) => item.whole((2, 6), report),
    };
    Some(Common {
        gravity: g?,
        accepted_gravity: accepted?,
        figures: figures? as u8,
    })
}

fn read_variant(item: &Item<'_>, report: &mut Report) -> Option<Variant> {
    let fields = item.fields(MODEL, report)?;
    let says = fields
        .required(
            "says",
            "the list of sentences that tell this variant",
            report,
        )
        .and_then(|item| {
            let elements = item.elements("sentences", (1, 50), report)?;
            elements
                .iter()
                .map(|item| {
                    item.said("the name of a sentence", report)
                        .map(str::to_owned)
                })
                .collect::<Option<Vec<_>>>()
        });
    let variant = read_model(item, &fields, true, report)?;
    Some(Variant {
        says: says?,
        ..variant
    })
}

fn grid(item: &Item<'_>, variants: &[Variant], report: &mut Report) -> Option<Grid> {
    let choices = |variant: &Variant| {
        let counts = variant.drawn.iter().map(|drawn| drawn.choices.len() as u32);
        counts.collect()
    };
    let grid = Grid::new(variants.iter().map(choices).collect());
    if grid.is_none() && report.is_empty() {
        let what = "problems; a lesson holds at most 2^64, take fewer values".to_owned();
        report.add(item, FaultKind::TooMany { what });
    }
    grid
}

/// Builds the first problem of each variant, so that no flaw waits for a learner.
fn check_problems(lesson: &Lesson, elements: &[Item<'_>], report: &mut Report) {
    if !report.is_empty() {
        return;
    }
    let languages: Vec<String> = lesson.languages().map(str::to_owned).collect();
    for (variant, item) in elements.iter().enumerate() {
        let indices = vec![0; lesson.variants[variant].drawn.len()];
        let place = super::GridPlace { variant, indices };
        let flaws = languages
            .iter()
            .filter_map(|language| lesson.problem_at(&place, language).err())
            .next();
        for flaw in flaws.into_iter().flatten() {
            report.add(item, FaultKind::Flawed(flaw));
        }
    }
}
