//! Faults that show only beside other lessons: what a lesson builds on, and its name.

use super::class::{ClassProfile, is_class, parse_class};
use super::decode::{Item, Report, decode};
use super::family::Lesson;
use super::fault::{Fault, FaultKind};
use super::read::{parse_lesson, read_model_alone};
use super::system_read::{ProblemFile, parse_problem_file};
use std::collections::BTreeSet;

/// What kind of file was found free of faults.
#[derive(Clone, Debug, PartialEq)]
pub enum Checked {
    /// A lesson file.
    Lesson(Box<Lesson>),
    /// A problem file.
    Problem(Box<crate::problem::Problem>),
    /// A problem of bodies in general.
    System(Box<crate::system::System>),
    /// A class profile.
    Class(Box<ClassProfile>),
}

/// Reads a file that may be a lesson, a problem or a class profile: one with a `model` or a
/// `system` is a problem, one with a `class` a profile.
///
/// # Errors
/// As for [`parse_lesson`].
pub fn check_file(json: &str) -> Result<Checked, Vec<Fault>> {
    let is_problem = decode(json, |root, _| {
        let object = root.value.as_object()?;
        Some(object.get("model").is_some() || object.get("system").is_some())
    });
    if is_problem == Ok(true) {
        return Ok(match parse_problem_file(json)? {
            ProblemFile::Guided(problem) => Checked::Problem(Box::new(problem)),
            ProblemFile::General(system) => Checked::System(Box::new(system)),
        });
    }
    if is_class(json) {
        return Ok(Checked::Class(Box::new(parse_class(json)?)));
    }
    Ok(Checked::Lesson(Box::new(parse_lesson(json)?)))
}

/// The problem that a problem file's model describes, though its text may have faults; `None` where
/// the model itself has one, and for any other file.
pub fn model_alone(json: &str) -> Option<crate::problem::Problem> {
    decode(json, |root, _| read_model_alone(root)).ok()
}

/// True for the text of a lesson: an object with `variants`, from which problems are drawn.
pub fn is_lesson(json: &str) -> bool {
    let has = decode(json, |root, _| {
        let object = root.value.as_object()?;
        Some(object.get("variants").is_some())
    });
    has == Ok(true)
}

/// Faults of a lesson file, itself without a fault, beside the lessons that it stands with.
/// `lessons` holds all of them, this one too; `taken` names those that came from the files before
/// it in the same folder.
pub fn faults_beside(json: &str, lessons: &[Lesson], taken: &BTreeSet<String>) -> Vec<Fault> {
    let told = decode(json, |root, report| {
        let fields = root.value.as_object().and(root.entries(report))?;
        let field = |name: &str| fields.iter().find(|(known, _)| *known == name);
        let (_, id) = field("id")?;
        if let Some(name) = id.as_text().filter(|name| taken.contains(*name)) {
            let means = "another lesson of this folder".to_owned();
            let name = name.to_owned();
            report.add(id, FaultKind::Reserved { name, means });
        }
        if let Some((_, item)) = field("builds_on") {
            for element in item.elements("words", (0, 100), report).unwrap_or_default() {
                check_base(&element, id.as_text()?, lessons, report);
            }
        }
        Some(())
    });
    told.err().unwrap_or_default()
}

/// A fault found by working a file, itself without a fault, at the first of these places that the
/// file has: `variants.0.ropes.1.direction`. The file as a whole where it has none.
/// Its code is one for machines.
pub fn fault_at(json: &str, places: &[String], code: &'static str, why: &str) -> Option<Fault> {
    let told = decode(json, |root, report| {
        let found = places.iter().find_map(|place| below(root, place));
        let why = why.to_owned();
        report.add(
            &found.unwrap_or_else(|| root.clone()),
            FaultKind::Worked { code, why },
        );
        Some(())
    });
    told.err()?.into_iter().next()
}

/// What stands at a place below an item.
fn below<'a>(item: &Item<'a>, place: &str) -> Option<Item<'a>> {
    let mut found = item.clone();
    for step in place.split('.') {
        // What is not there is no fault here.
        let quiet = &mut Report::default();
        found = match step.parse::<usize>() {
            Ok(index) => {
                let elements = found.elements("parts", (0, usize::MAX), quiet)?;
                elements.into_iter().nth(index)?
            }
            Err(_) => {
                let entries = found.entries(quiet)?;
                entries.into_iter().find(|(name, _)| *name == step)?.1
            }
        };
    }
    Some(found)
}

fn check_base(item: &Item<'_>, id: &str, lessons: &[Lesson], report: &mut Report) {
    let Some(base) = item.as_text() else { return };
    if !lessons.iter().any(|lesson| lesson.id() == base) {
        let known: Vec<&str> = lessons.iter().map(Lesson::id).collect();
        item.expected(
            &format!("the name of a lesson, one of {}", known.join(", ")),
            report,
        );
        return;
    }
    // A lesson that names itself is told by its own file.
    if base != id && leads_to(base, id, lessons) {
        let why = format!(
            "{base} builds on {id} in turn, so neither can come first; take one of the two out"
        );
        report.add(item, FaultKind::Contradiction { why });
    }
}

/// True if a lesson builds on another, directly or by lessons between.
fn leads_to(from: &str, to: &str, lessons: &[Lesson]) -> bool {
    let mut seen = BTreeSet::from([from]);
    let mut open = vec![from];
    while let Some(id) = open.pop() {
        let bases = lessons.iter().filter(|lesson| lesson.id() == id);
        for base in bases.flat_map(Lesson::builds_on) {
            if base == to {
                return true;
            }
            if seen.insert(base) {
                open.push(base);
            }
        }
    }
    false
}
