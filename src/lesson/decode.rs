//! The layer between JSON and the forms: values that know where they stand, and a list of faults
//! that grows while reading goes on.

use super::fault::{Fault, FaultKind};
use crate::text::printable;
use jsonc_parser::ast::{Object, Value};
use jsonc_parser::common::Ranged;
use jsonc_parser::{CollectOptions, ParseOptions, parse_to_ast};
use std::collections::{BTreeMap, BTreeSet};

/// JSON as the standard has it (RFC 8259): no comments, no trailing commas.
const STRICT: ParseOptions = ParseOptions {
    allow_comments: false,
    allow_loose_object_property_names: false,
    allow_trailing_commas: false,
    allow_missing_commas: false,
    allow_single_quoted_strings: false,
    allow_hexadecimal_numbers: false,
    allow_unary_plus_numbers: false,
    allow_bare_decimal_point_numbers: false,
    allow_non_finite_numbers: false,
    allow_extended_string_escapes: false,
};

/// The faults found so far, by the byte at which they stand.
#[derive(Default)]
pub(super) struct Report {
    faults: Vec<(usize, String, FaultKind)>,
}

impl Report {
    pub(super) fn add(&mut self, item: &Item<'_>, kind: FaultKind) {
        self.faults.push((item.start, item.path.clone(), kind));
    }

    pub(super) fn is_empty(&self) -> bool {
        self.faults.is_empty()
    }

    /// The faults in the order of the text, each with line and column.
    pub(super) fn into_faults(mut self, text: &str) -> Vec<Fault> {
        self.faults.sort_by_key(|(start, _, _)| *start);
        let (mut at, mut line, mut column) = (0, 1, 1);
        let mut faults = Vec::new();
        for (start, path, kind) in self.faults {
            for c in text.get(at..start).unwrap_or("").chars() {
                if c == '\n' {
                    line += 1;
                    column = 1;
                } else {
                    column += 1;
                }
            }
            at = at.max(start);
            faults.push(Fault {
                line,
                column,
                path,
                kind,
            });
        }
        faults
    }
}

/// Parses the text as strict JSON and hands its value to `decode`.
pub(super) fn decode<T>(
    json: &str,
    decode: impl FnOnce(&Item<'_>, &mut Report) -> Option<T>,
) -> Result<T, Vec<Fault>> {
    let text = json.strip_prefix('\u{feff}').unwrap_or(json);
    let mut report = Report::default();
    let mut decoded = None;
    match parse_to_ast(text, &CollectOptions::default(), &STRICT) {
        Err(trouble) => {
            let kind = FaultKind::NotJson {
                trouble: trouble.kind().to_string(),
            };
            let start = trouble.range().start.min(text.len());
            report.faults.push((start, String::new(), kind));
        }
        Ok(parsed) => match parsed.value {
            None => {
                let trouble = "the file is empty".to_owned();
                let kind = FaultKind::NotJson { trouble };
                report.faults.push((0, String::new(), kind));
            }
            Some(value) => decoded = decode(&Item::root(&value), &mut report),
        },
    }
    match decoded {
        Some(decoded) if report.is_empty() => Ok(decoded),
        _ => Err(report.into_faults(text)),
    }
}

/// A value and where it stands.
#[derive(Clone)]
pub(super) struct Item<'a> {
    pub(super) value: &'a Value<'a>,
    pub(super) path: String,
    start: usize,
}

impl<'a> Item<'a> {
    fn root(value: &'a Value<'a>) -> Item<'a> {
        Item::new(value, String::new())
    }

    fn new(value: &'a Value<'a>, path: String) -> Item<'a> {
        let start = value.range().start;
        Item { value, path, start }
    }

    /// The same place under the path of a field that is not there.
    fn lacking(&self, name: &str) -> Item<'a> {
        Item {
            path: join(&self.path, name),
            ..self.clone()
        }
    }

    /// What stands under this name, if this is an object that has it.
    pub(super) fn inside(&self, name: &str) -> Option<Item<'a>> {
        let property = self.value.as_object()?.get(name)?;
        Some(Item::new(&property.value, join(&self.path, name)))
    }

    /// Reports that something else was wanted here.
    pub(super) fn expected(&self, expected: &str, report: &mut Report) {
        let kind = FaultKind::Expected {
            expected: expected.to_owned(),
            found: self.found(),
        };
        report.add(self, kind);
    }

    fn found(&self) -> String {
        match self.value {
            Value::StringLit(text) => {
                let printable = printable(&text.value);
                let letters = printable.chars().take(40).map(|c| match c {
                    c if is_seen(c) || c == ' ' => c.to_string(),
                    unseen => unseen.escape_unicode().to_string(),
                });
                format!("\"{}\"", letters.collect::<String>())
            }
            Value::NumberLit(number) => number.value.chars().take(40).collect(),
            Value::BooleanLit(truth) => truth.value.to_string(),
            Value::Object(_) => "an object in braces".to_owned(),
            Value::Array(_) => "a list in brackets".to_owned(),
            Value::NullKeyword(_) => "null".to_owned(),
        }
    }

    /// The string that stands here, if one does.
    pub(super) fn as_text(&self) -> Option<&'a str> {
        self.value.as_string_lit().map(|text| text.value.as_ref())
    }

    /// A string without control characters.
    pub(super) fn text(&self, expected: &str, report: &mut Report) -> Option<&'a str> {
        let text = self.as_text().filter(|text| printable(text) == **text);
        if text.is_none() {
            self.expected(expected, report);
        }
        text
    }

    /// A string without control characters in which something can be seen.
    pub(super) fn said(&self, expected: &str, report: &mut Report) -> Option<&'a str> {
        let text = self.text(expected, report)?;
        let blank = !text.chars().any(is_seen);
        if blank {
            self.expected(expected, report);
        }
        (!blank).then_some(text)
    }

    /// One of these words.
    pub(super) fn word<T: Copy>(&self, words: &[(&str, T)], report: &mut Report) -> Option<T> {
        let found = self
            .as_text()
            .and_then(|text| words.iter().find(|(word, _)| *word == text));
        if found.is_none() {
            let words: Vec<String> = words
                .iter()
                .map(|(word, _)| format!("\"{word}\""))
                .collect();
            self.expected(&words.join(" or "), report);
        }
        found.map(|(_, meaning)| *meaning)
    }

    /// A whole number in this range.
    pub(super) fn whole(&self, range: (u32, u32), report: &mut Report) -> Option<u32> {
        let (least, most) = range;
        let number = self
            .value
            .as_number_lit()
            .and_then(|number| number.value.parse::<u32>().ok())
            .filter(|number| (least..=most).contains(number));
        if number.is_none() {
            self.expected(&format!("a whole number from {least} to {most}"), report);
        }
        number
    }

    /// The elements of a list with at least and at most so many.
    pub(super) fn elements(
        &self,
        what: &str,
        range: (usize, usize),
        report: &mut Report,
    ) -> Option<Vec<Item<'a>>> {
        let Some(array) = self.value.as_array() else {
            self.expected(&format!("a list of {what} in brackets"), report);
            return None;
        };
        let (least, most) = range;
        if array.elements.len() < least {
            let kind = FaultKind::Expected {
                expected: match least {
                    1 => format!("a list of one or more {what}"),
                    _ => format!("a list of at least {least} {what}"),
                },
                found: array.elements.len().to_string(),
            };
            report.add(self, kind);
        }
        if array.elements.len() > most {
            let what = format!("{} {what}, at most {most} are read", array.elements.len());
            report.add(self, FaultKind::TooMany { what });
            return None;
        }
        let elements = array.elements.iter().enumerate();
        Some(
            elements
                .map(|(index, value)| Item::new(value, format!("{}[{index}]", self.path)))
                .collect(),
        )
    }

    /// The fields of an object, none of them twice and all of them known.
    pub(super) fn fields(&self, known: &[&str], report: &mut Report) -> Option<Fields<'a>> {
        let Some(object) = self.value.as_object() else {
            self.expected("an object in braces", report);
            return None;
        };
        let fields = self.checked_fields(object, report);
        for item in fields
            .items
            .values()
            .filter(|item| !known.contains(&item.0))
        {
            let kind = FaultKind::Unknown {
                known: known.iter().map(|&name| name.to_owned()).collect(),
            };
            report.add(&item.1, kind);
        }
        Some(fields)
    }

    /// The fields of an object whose names are the author's own.
    pub(super) fn entries(&self, report: &mut Report) -> Option<Vec<(&'a str, Item<'a>)>> {
        let Some(object) = self.value.as_object() else {
            self.expected("an object in braces", report);
            return None;
        };
        let fields = self.checked_fields(object, report);
        Some(
            fields
                .items
                .into_values()
                .map(|(name, _, item)| (name, item))
                .collect(),
        )
    }

    fn checked_fields(&self, object: &'a Object<'a>, report: &mut Report) -> Fields<'a> {
        let mut items = BTreeMap::new();
        let mut seen = BTreeSet::new();
        for property in &object.properties {
            let name = property.name.as_str();
            let path = join(&self.path, &printable(name));
            let at_name = Item {
                value: &property.value,
                path: path.clone(),
                start: property.range.start,
            };
            if !seen.insert(name) {
                report.add(&at_name, FaultKind::Twice);
                continue;
            }
            items.insert(name, (name, at_name, Item::new(&property.value, path)));
        }
        Fields {
            owner: self.clone(),
            items,
        }
    }
}

/// False for blanks, and for characters of no width that look like nothing.
fn is_seen(c: char) -> bool {
    let no_width =
        matches!(c, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{2060}'..='\u{2064}' | '\u{feff}');
    !c.is_whitespace() && !no_width
}

fn join(path: &str, name: &str) -> String {
    if path.is_empty() {
        name.to_owned()
    } else {
        format!("{path}.{name}")
    }
}

/// The fields of an object: by name, each at its name and at its value.
pub(super) struct Fields<'a> {
    owner: Item<'a>,
    items: BTreeMap<&'a str, (&'a str, Item<'a>, Item<'a>)>,
}

impl<'a> Fields<'a> {
    /// The field of this name, if it is there.
    pub(super) fn optional(&self, name: &str) -> Option<Item<'a>> {
        self.items.get(name).map(|(_, _, item)| item.clone())
    }

    /// The field of this name; reports that it is missing.
    pub(super) fn required(
        &self,
        name: &str,
        expected: &str,
        report: &mut Report,
    ) -> Option<Item<'a>> {
        let item = self.optional(name);
        if item.is_none() {
            let expected = expected.to_owned();
            report.add(&self.owner.lacking(name), FaultKind::Missing { expected });
        }
        item
    }

    /// True if the field is there.
    pub(super) fn has(&self, name: &str) -> bool {
        self.items.contains_key(name)
    }
}
