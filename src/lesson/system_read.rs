//! Reading problem files of either kind: one straight body, or bodies in general.

use super::decode::{Fields, Item, Report, decode};
use super::fault::{Fault, FaultKind};
use super::read::{Common, check_form, read_common, read_problem};
use super::system_names::{Reader, no_such};
use super::texts::{Piece, fill, pieces};
use super::{system_faults, system_order, texts};
use crate::problem::Problem;
use crate::system::{ActId, Parts, System};

const FILE: &[&str] = &[
    "leverwright",
    "g",
    "accepted_g",
    "figures",
    "system",
    "text",
];
const SYSTEM: &[&str] = &[
    "bodies", "weights", "loads", "ropes", "holds", "asked", "sought", "order",
];
const TEXT: &[&str] = &["title", "statement", "caution", "meanings"];

/// What a problem file describes.
#[derive(Clone, Debug, PartialEq)]
pub enum ProblemFile {
    /// One straight body, under `"model"`: the guided walk can work it.
    Guided(Problem),
    /// Bodies in general, under `"system"`.
    General(System),
}

/// Reads a problem file of either kind, told apart by the field `"model"` or `"system"`.
///
/// # Errors
/// Every fault of the file at once, in the order of the file; a text that is not JSON has one.
///
/// # Example
/// ```
/// use leverwright::lesson::parse_problem_file;
/// let faults = parse_problem_file("{\"leverwright\": 1}").unwrap_err();
/// assert!(faults[0].to_string().contains("\"model\""));
/// ```
pub fn parse_problem_file(json: &str) -> Result<ProblemFile, Vec<Fault>> {
    decode(json, |root, report| {
        let has = |name: &str| super::system_spot::stands(root, name);
        match (has("model"), has("system")) {
            (_, true) => read_file(root, report).map(ProblemFile::General),
            (true, false) => read_problem(root, report).map(ProblemFile::Guided),
            (false, false) => {
                root.expected(
                    "a problem with \"model\" (one straight body) or \"system\" (bodies in general)",
                    report,
                );
                None
            }
        }
    })
}

/// Reads a general problem: a file with `"system"`.
///
/// # Errors
/// As for [`parse_problem_file`].
pub fn parse_system(json: &str) -> Result<System, Vec<Fault>> {
    decode(json, read_file)
}

/// Every list of parts, each with where it stands.
pub(super) struct Lists<'a> {
    pub(super) bodies: Vec<Item<'a>>,
    pub(super) weights: Vec<Item<'a>>,
    pub(super) loads: Vec<Item<'a>>,
    pub(super) ropes: Vec<Item<'a>>,
    pub(super) holds: Vec<Item<'a>>,
}

fn read_file(root: &Item<'_>, report: &mut Report) -> Option<System> {
    let fields = root.fields(FILE, report)?;
    check_form(&fields, report)?;
    let common = read_common(&fields, report);
    let item = fields.required(
        "system",
        "an object that describes bodies and what acts on them",
        report,
    );
    let text = fields.required("text", "an object with \"title\" and \"statement\"", report);
    let item = item?;
    let mut reader = Reader::new(&item, report);
    let parts = read_parts(&item, &mut reader);
    let text = text.and_then(|item| read_text(&item, &mut reader));
    let (mut parts, lists) = parts?;
    let (Some(text), Some(common), true) = (text, common, reader.report.is_empty()) else {
        system_faults::beside(&parts, &item, &lists, &mut reader);
        return None;
    };
    put_common(&mut parts, common);
    text.tell(&mut parts);
    system_faults::checked(parts, &item, &lists, &mut reader)
}

fn put_common(parts: &mut Parts, common: Common) {
    parts.gravity = common.gravity;
    parts.accepted_gravity = common.accepted_gravity;
    parts.figures = common.figures;
}

/// What was read of a list.
struct Kept<'a, T> {
    items: Vec<Item<'a>>,
    parts: Vec<T>,
    complete: bool,
}

/// What can be read of a list; of one whose elements are told by their places, all before the
/// first that cannot.
fn every<'r, 'a, T>(
    reader: &mut Reader<'r, 'a>,
    items: &[Item<'a>],
    read: fn(&mut Reader<'r, 'a>, &Item<'a>, usize) -> Option<T>,
    placed: bool,
) -> Kept<'a, T> {
    let mut kept = Kept {
        items: Vec::new(),
        parts: Vec::new(),
        complete: true,
    };
    for (index, item) in items.iter().enumerate() {
        match read(reader, item, index) {
            Some(part) if kept.complete || !placed => {
                kept.items.push(item.clone());
                kept.parts.push(part);
            }
            Some(_) => {}
            None => kept.complete = false,
        }
    }
    kept
}

fn read_parts<'a>(item: &Item<'a>, reader: &mut Reader<'_, 'a>) -> Option<(Parts, Lists<'a>)> {
    let fields = item.fields(SYSTEM, reader.report)?;
    if !fields.has("bodies") {
        fields.required("bodies", "a list of bodies in brackets", reader.report);
    }
    let lists = Lists {
        bodies: reader.list(&fields, "bodies"),
        weights: reader.list(&fields, "weights"),
        loads: reader.list(&fields, "loads"),
        ropes: reader.list(&fields, "ropes"),
        holds: reader.list(&fields, "holds"),
    };
    // Names first: parts may refer to bodies and forces that stand later in the file.
    reader.meet_bodies(&lists.bodies);
    reader.meet_forces(&lists.weights, ActId::Weight);
    reader.meet_forces(&lists.loads, ActId::Load);
    reader.meet_forces(&lists.ropes, ActId::Cord);
    reader.meet_forces(&lists.holds, ActId::Hold);
    let bodies = every(reader, &lists.bodies, Reader::body_part, true);
    let weights = every(reader, &lists.weights, Reader::weight, true);
    let loads = every(reader, &lists.loads, Reader::load, true);
    let cords = every(reader, &lists.ropes, Reader::rope, false);
    let holds = every(reader, &lists.holds, Reader::hold, false);
    let asked = reader.asked(&fields);
    let sought = reader.sought(&fields);
    reader.check_uses();
    reader.check_places();
    if lists.bodies.is_empty() && fields.has("bodies") {
        reader.contradiction(item, "there is no body; list one under \"bodies\"");
    }
    let order = read_order(&fields, reader);
    let all = bodies.complete && weights.complete && loads.complete;
    let whole = all && cords.complete && holds.complete && asked.is_some() && sought.is_some();
    let is_placed = bodies.complete;
    let lists = Lists {
        bodies: bodies.items,
        weights: weights.items,
        loads: loads.items,
        ropes: cords.items,
        holds: holds.items,
    };
    let sought = sought.flatten();
    let middle = sought
        .as_ref()
        .map_or(0.0, |range| 0.5 * (range.low + range.high));
    let mut parts = Parts {
        title: String::new(),
        statement: String::new(),
        caution: String::new(),
        givens: reader.givens(middle),
        bodies: bodies.parts,
        weights: weights.parts,
        loads: loads.parts,
        cords: cords.parts,
        holds: holds.parts,
        asked: asked.unwrap_or_default(),
        sought,
        gravity: 0.0,
        accepted_gravity: Vec::new(),
        figures: 0,
    };
    let (Some(order), true) = (order, whole) else {
        // Of what is at fault is told already; what else cannot be drawn is told too.
        if is_placed {
            system_faults::beside(&parts, item, &lists, reader);
        }
        return None;
    };
    system_order::renumber(&mut parts, &order);
    Some((parts, lists))
}

/// The places of the numbers in the order in which they are told, or in that which the file asks.
fn read_order(fields: &Fields<'_>, reader: &mut Reader<'_, '_>) -> Option<Vec<usize>> {
    let told = reader.order();
    let order = fields.optional("order");
    // Beside other faults a number may be missing that the order rightly names.
    let Some(item) = order.filter(|_| reader.report.is_empty()) else {
        return Some(told);
    };
    let names = reader.given_names();
    let elements = item.elements("names", (0, names.len()), reader.report)?;
    let mut order = Vec::new();
    for element in &elements {
        let Some(name) = element.text("the name of a number", reader.report) else {
            continue;
        };
        match names.iter().position(|known| known == name) {
            Some(place) if order.contains(&told[place]) => {
                reader.report.add(element, FaultKind::Twice)
            }
            Some(place) => order.push(told[place]),
            None => {
                let known = names.iter().map(String::as_str).collect();
                reader.report.add(element, no_such("number", name, known));
            }
        }
    }
    if order.len() < told.len() {
        let why = format!("this order must name each of {} once", names.join(", "));
        reader.contradiction(&item, why);
        return None;
    }
    Some(order)
}

/// The words of a general problem.
struct Words {
    title: String,
    statement: String,
    caution: String,
    meanings: Vec<(String, String)>,
}

impl Words {
    fn tell(self, parts: &mut Parts) {
        for (symbol, meaning) in self.meanings {
            let mut givens = parts.givens.iter_mut();
            if let Some(given) = givens.find(|given| given.symbol.as_str() == symbol) {
                given.meaning = meaning;
            }
        }
        parts.statement = fill(&self.statement, &parts.givens);
        parts.title = self.title;
        parts.caution = self.caution;
    }
}

fn read_text(item: &Item<'_>, reader: &mut Reader<'_, '_>) -> Option<Words> {
    let fields = item.fields(TEXT, reader.report)?;
    let mut line = |name: &str, expected: &str| {
        let item = fields.required(name, expected, reader.report)?;
        let text = item.text(expected, reader.report)?;
        Some((text.to_owned(), item))
    };
    let title = line("title", "one line that names the problem");
    let statement = line("statement", "the scene in words, with every given number");
    let caution = match fields.optional("caution") {
        Some(item) => item
            .text("a sentence of caution", reader.report)
            .map(|text| texts::caution(Some(text))),
        None => Some(texts::caution(None)),
    };
    let names = reader.given_names();
    let known = || names.iter().map(String::as_str).collect::<Vec<&str>>();
    let mut meanings = Vec::new();
    if let Some(item) = fields.optional("meanings") {
        for (symbol, entry) in item.entries(reader.report)? {
            if reader.is_untold(symbol) {
                reader
                    .report
                    .add(&entry, no_such("number", symbol, known()));
            }
            let meaning = entry
                .text("what the number is", reader.report)
                .unwrap_or_default();
            meanings.push((symbol.to_owned(), meaning.to_owned()));
        }
    }
    let (statement, at) = statement?;
    for piece in pieces(&statement) {
        if let Piece::Slot(name) | Piece::NamedSlot(name) = piece
            && reader.is_untold(name)
        {
            reader.report.add(&at, no_such("number", name, known()));
        }
    }
    Some(Words {
        title: title?.0,
        statement,
        caution: caution?,
        meanings,
    })
}
