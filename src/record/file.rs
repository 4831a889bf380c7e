//! The promise: how a record stands in a file. The only file of this room that knows serde.
//!
//! ```text
//! {"record":1,"id":"S-3","sequence":3,"at":"2026-11-25T09:00:00.000Z","kind":"line",
//!  "problem":"S-2","text":"cos(33°) * 50 N","sum":"9ac01b3e"}
//! ```
//! is one line (broken here to be read). `record` is the version of the format and comes first;
//! `text` is the line as typed; one that was refused for its length ends after 500 characters in `…`.
//! `sum` comes last and is the CRC-32 of the text before `,"sum"`. New fields may be added under
//! the same version; readers pass over fields and kinds that they do not know.

use super::checksum;
use super::journal::Damage;
use super::{
    Beginning, Closed, Ending, Entry, Line, Opened, Origin, OtherEntry, Record, RecordId, Verdict,
};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::collections::BTreeMap;

/// Version of the format that this program writes.
pub const FORMAT_VERSION: u32 = 1;

/// How every record begins; no other part of a record looks like it.
pub(super) const OPENING: &str = "{\"record\":";

const SUM: &str = ",\"sum\":\"";
const SUM_DIGITS: usize = 8;
const END: &str = "\"}";

#[derive(Serialize, Deserialize)]
struct Head {
    record: u32,
    id: String,
    sequence: u64,
    at: String,
    kind: String,
}

#[derive(Serialize, Deserialize)]
struct SittingShape {
    sitting: String,
    learner: String,
    program: String,
}

#[derive(Serialize, Deserialize)]
struct OpenedShape {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    code: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    lesson: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    lesson_version: Option<u32>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    seed: Option<u64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    continues: Option<String>,
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    options: BTreeMap<String, String>,
    problem: Value,
}

#[derive(Serialize, Deserialize)]
struct LineShape {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    problem: Option<String>,
    text: String,
}

#[derive(Serialize, Deserialize)]
struct VerdictShape {
    line: String,
    truth: String,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    progress: Vec<String>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    mistakes: Vec<String>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    confirmed: Vec<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    hint: Option<u8>,
    #[serde(default)]
    message: String,
}

#[derive(Serialize, Deserialize)]
struct ClosedShape {
    problem: String,
    ending: EndingShape,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum EndingShape {
    Finished,
    Left,
}

#[derive(Serialize)]
struct Whole<'a, Body> {
    #[serde(flatten)]
    head: &'a Head,
    #[serde(flatten)]
    body: Body,
}

/// A record as one line, without the line's end.
pub(super) fn write(record: &Record) -> String {
    let kind = match &record.entry {
        Entry::Sitting(_) => "sitting",
        Entry::Opened(_) => "opened",
        Entry::Line(_) => "line",
        Entry::Verdict(_) => "verdict",
        Entry::Closed(_) => "closed",
        Entry::Other(other) => &other.kind,
    };
    let head = Head {
        record: FORMAT_VERSION,
        id: record.id.0.clone(),
        sequence: record.sequence,
        at: record.at.clone(),
        kind: kind.to_owned(),
    };
    match &record.entry {
        Entry::Sitting(entry) => seal(&head, sitting_shape(entry)),
        Entry::Opened(entry) => seal(&head, opened_shape(entry)),
        Entry::Line(entry) => seal(&head, line_shape(entry)),
        Entry::Verdict(entry) => seal(&head, verdict_shape(entry)),
        Entry::Closed(entry) => seal(&head, closed_shape(entry)),
        // Written as it came, so that nothing a newer version meant is lost.
        Entry::Other(other) => close(&other.json),
    }
}

/// The JSON of a record with its checksum as last field.
fn seal<Body: Serialize>(head: &Head, body: Body) -> String {
    // Strings, numbers and maps with string keys always have a JSON form.
    close(&serde_json::to_string(&Whole { head, body }).unwrap_or_default())
}

fn close(json: &str) -> String {
    let open = json.strip_suffix('}').unwrap_or(json);
    format!("{open}{SUM}{}{END}", checksum::of(open))
}

/// Reads one line, which must be a whole record with a right checksum.
pub(super) fn read(line: &str) -> Result<Record, Damage> {
    let json = unseal(line)?;
    let value: Value = serde_json::from_str(&json).map_err(|_| Damage::NotARecord)?;
    let head: Head = serde_json::from_value(value.clone()).map_err(|_| Damage::NotARecord)?;
    let entry = match entry(&head.kind, &value) {
        Some(Ok(entry)) => entry,
        // A newer version may have changed what a kind holds; then it is one we do not know.
        Some(Err(missing)) if head.record <= FORMAT_VERSION => {
            return Err(Damage::Incomplete { missing });
        }
        _ => Entry::Other(OtherEntry {
            version: head.record,
            kind: head.kind,
            json,
        }),
    };
    Ok(Record {
        id: RecordId(head.id),
        sequence: head.sequence,
        at: head.at,
        entry,
    })
}

/// The JSON of a line without its checksum, which is checked.
fn unseal(line: &str) -> Result<String, Damage> {
    if !line.starts_with(OPENING) {
        return Err(Damage::NotARecord);
    }
    let (open, tail) = line.rsplit_once(SUM).ok_or(Damage::Torn)?;
    let sum = tail.strip_suffix(END).ok_or(Damage::Torn)?;
    if sum.len() != SUM_DIGITS || sum != checksum::of(open) {
        return Err(Damage::WrongChecksum);
    }
    Ok(format!("{open}}}"))
}

/// The entry of a kind, or none if the kind is not known.
fn entry(kind: &str, value: &Value) -> Option<Result<Entry, String>> {
    Some(match kind {
        "sitting" => shape(value, |shape: SittingShape| {
            Entry::Sitting(Beginning {
                sitting: shape.sitting,
                learner: shape.learner,
                program_version: shape.program,
            })
        }),
        "opened" => shape(value, opened),
        "line" => shape(value, |shape: LineShape| {
            Entry::Line(Line {
                problem: shape.problem.map(RecordId),
                text: shape.text,
            })
        }),
        "verdict" => shape(value, verdict),
        "closed" => shape(value, |shape: ClosedShape| {
            Entry::Closed(Closed {
                problem: RecordId(shape.problem),
                ending: match shape.ending {
                    EndingShape::Finished => Ending::Finished,
                    EndingShape::Left => Ending::Left,
                },
            })
        }),
        _ => return None,
    })
}

fn shape<Shape: DeserializeOwned>(
    value: &Value,
    make: impl FnOnce(Shape) -> Entry,
) -> Result<Entry, String> {
    serde_json::from_value(value.clone())
        .map(make)
        .map_err(|trouble| trouble.to_string())
}

fn opened(shape: OpenedShape) -> Entry {
    let origin = match (shape.code, shape.lesson, shape.lesson_version, shape.seed) {
        (Some(code), Some(lesson), Some(lesson_version), Some(seed)) => Some(Origin {
            code,
            lesson,
            lesson_version,
            seed,
        }),
        _ => None,
    };
    Entry::Opened(Box::new(Opened {
        problem_json: match shape.problem {
            Value::String(text) => text,
            value => value.to_string(),
        },
        origin,
        options: shape.options,
        continues: shape.continues.map(RecordId),
    }))
}

fn verdict(shape: VerdictShape) -> Entry {
    Entry::Verdict(Verdict {
        line: RecordId(shape.line),
        truth: shape.truth,
        progress: shape.progress,
        mistakes: shape.mistakes,
        confirmed: shape.confirmed,
        hint: shape.hint,
        message: shape.message,
    })
}

fn sitting_shape(entry: &Beginning) -> SittingShape {
    SittingShape {
        sitting: entry.sitting.clone(),
        learner: entry.learner.clone(),
        program: entry.program_version.clone(),
    }
}

fn opened_shape(entry: &Opened) -> OpenedShape {
    let origin = entry.origin.as_ref();
    OpenedShape {
        code: origin.map(|origin| origin.code.clone()),
        lesson: origin.map(|origin| origin.lesson.clone()),
        lesson_version: origin.map(|origin| origin.lesson_version),
        seed: origin.map(|origin| origin.seed),
        continues: entry.continues.as_ref().map(|id| id.0.clone()),
        options: entry.options.clone(),
        problem: nested(&entry.problem_json),
    }
}

/// A JSON text as a value that can stand one level down in a record; any other text as a string.
fn nested(text: &str) -> Value {
    // Parsed one level down, for the parser refuses deep nesting and the record must be readable.
    match serde_json::from_str::<Value>(&format!("[{text}]")) {
        Ok(Value::Array(mut values)) if values.len() == 1 => match values.pop() {
            // A bare string would be taken for a text that is no JSON; keep its quotes.
            Some(value) if !value.is_string() => value,
            _ => Value::String(text.to_owned()),
        },
        _ => Value::String(text.to_owned()),
    }
}

fn line_shape(entry: &Line) -> LineShape {
    LineShape {
        problem: entry.problem.as_ref().map(|id| id.0.clone()),
        text: entry.text.clone(),
    }
}

fn verdict_shape(entry: &Verdict) -> VerdictShape {
    VerdictShape {
        line: entry.line.0.clone(),
        truth: entry.truth.clone(),
        progress: entry.progress.clone(),
        mistakes: entry.mistakes.clone(),
        confirmed: entry.confirmed.clone(),
        hint: entry.hint,
        message: entry.message.clone(),
    }
}

fn closed_shape(entry: &Closed) -> ClosedShape {
    ClosedShape {
        problem: entry.problem.0.clone(),
        ending: match entry.ending {
            Ending::Finished => EndingShape::Finished,
            Ending::Left => EndingShape::Left,
        },
    }
}
