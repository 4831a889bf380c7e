//! What can be wrong with a file, and where.

use crate::problem::Flaw;
use std::fmt;

/// One fault of a lesson or problem file.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// Line, counted from 1.
    pub line: usize,
    /// Column in characters, counted from 1.
    pub column: usize,
    /// The field, such as `variants[0].ropes[0].at`; empty for the file as a whole.
    pub path: String,
    /// What is wrong.
    pub kind: FaultKind,
}

/// What is wrong at a place of a file.
#[derive(Clone, Debug, PartialEq)]
pub enum FaultKind {
    /// The text is not JSON.
    NotJson {
        /// What the JSON reader says.
        trouble: String,
    },
    /// Another kind of value, unit or word is wanted here.
    Expected {
        /// What is wanted, with an example.
        expected: String,
        /// What stands there.
        found: String,
    },
    /// A field is missing.
    Missing {
        /// What the field holds, with an example.
        expected: String,
    },
    /// A field that the form does not know.
    Unknown {
        /// The fields that may stand there.
        known: Vec<String>,
    },
    /// A field that stands twice in one object.
    Twice,
    /// A form version that this program does not read.
    OtherForm {
        /// The version found.
        found: String,
    },
    /// A range whose step does not lead from its beginning to its end.
    StepDoesNotFit {
        /// First value as written.
        from: String,
        /// Last value as written.
        to: String,
        /// Step as written.
        step: String,
    },
    /// More choices, parts or problems than this program holds.
    TooMany {
        /// What there is too much of, and how many are allowed.
        what: String,
    },
    /// A range in a file that must fix every number.
    DrawnInProblem,
    /// A place that lies, or may be drawn, beyond the tip of the body.
    OffBody {
        /// The farthest place, as written.
        place: String,
        /// The shortest body, as written.
        length: String,
    },
    /// A place beyond the end of its part, in a general problem.
    BeyondPart {
        /// The place, as written.
        place: String,
        /// The length of the part, as written.
        length: String,
    },
    /// Parts that cannot stand together.
    Contradiction {
        /// Which, and why.
        why: String,
    },
    /// What only shows once a problem is drawn and worked.
    Worked {
        /// A short name of it, for machines.
        code: &'static str,
        /// What.
        why: String,
    },
    /// A name that already means something to the program.
    Reserved {
        /// The name.
        name: String,
        /// What it means.
        means: String,
    },
    /// A name that stands for two things.
    NameTwice {
        /// The name.
        symbol: String,
    },
    /// A reference to a name that is not given.
    NoSuchGiven {
        /// The name.
        symbol: String,
        /// The names that are given.
        given: Vec<String>,
    },
    /// A reference to a body, a force or a number that is not there.
    NoSuchName {
        /// What is looked for: "body".
        what: &'static str,
        /// The name.
        name: String,
        /// The known name nearest to it, if one is near.
        nearest: Option<String>,
        /// The names that are known.
        known: Vec<String>,
    },
    /// A statement that does not tell a given number.
    NotTold {
        /// The name of the given.
        symbol: String,
        /// Which variant, counted from 0; `None` in a problem file.
        variant: Option<usize>,
    },
    /// A word that the texts of this language lack.
    NoWord {
        /// The key.
        key: String,
    },
    /// A text that nothing uses.
    UnusedWord {
        /// The key.
        key: String,
    },
    /// A flaw of the problem that the file describes.
    Flawed(Flaw),
    /// A fault of the system that the file describes.
    Unsound(crate::system::Fault),
}

impl FaultKind {
    /// A short name that stays the same in every version, for machines.
    pub fn code(&self) -> &'static str {
        match self {
            FaultKind::NotJson { .. } => "not-json",
            FaultKind::Expected { .. } => "expected",
            FaultKind::Missing { .. } => "missing-field",
            FaultKind::Unknown { .. } => "unknown-field",
            FaultKind::Twice => "twice",
            FaultKind::OtherForm { .. } => "other-form",
            FaultKind::StepDoesNotFit { .. } => "step-does-not-fit",
            FaultKind::TooMany { .. } => "too-many",
            FaultKind::DrawnInProblem => "drawn-in-problem",
            FaultKind::OffBody { .. } | FaultKind::BeyondPart { .. } => "off-body",
            FaultKind::Contradiction { .. } => "contradiction",
            FaultKind::Worked { code, .. } => code,
            FaultKind::Reserved { .. } => "reserved-name",
            FaultKind::NameTwice { .. } => "name-twice",
            FaultKind::NoSuchGiven { .. } => "no-such-given",
            FaultKind::NoSuchName { .. } => "no-such-name",
            FaultKind::NotTold { .. } => "not-told",
            FaultKind::NoWord { .. } => "no-word",
            FaultKind::UnusedWord { .. } => "unused-word",
            FaultKind::Flawed(flaw) => flaw.code(),
            FaultKind::Unsound(fault) => fault.code(),
        }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "line {}, column {}", self.line, self.column)?;
        if !self.path.is_empty() {
            write!(formatter, ", {}", self.path)?;
        }
        write!(formatter, ": {}", self.kind)
    }
}

impl fmt::Display for FaultKind {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            FaultKind::NotJson { trouble } => write!(formatter, "this is not JSON: {trouble}"),
            FaultKind::Expected { expected, found } => {
                write!(formatter, "expected {expected}, found {found}")
            }
            FaultKind::Missing { expected } => {
                write!(formatter, "this field is missing; write {expected}")
            }
            FaultKind::Unknown { known } => {
                write!(
                    formatter,
                    "no field of this name belongs here; the fields are {}",
                    known.join(", ")
                )
            }
            FaultKind::Twice => write!(formatter, "this field stands here twice; keep one"),
            FaultKind::OtherForm { found } => write!(
                formatter,
                "this program reads form version 1, the file says {found}"
            ),
            FaultKind::StepDoesNotFit { from, to, step } => write!(
                formatter,
                "steps of {step} do not lead from {from} to {to}; change one of the three"
            ),
            FaultKind::TooMany { what } => write!(formatter, "too many: {what}"),
            FaultKind::DrawnInProblem => write!(
                formatter,
                "a problem file fixes every number; write one value such as \"2.4 m\""
            ),
            FaultKind::OffBody { place, length } => write!(
                formatter,
                "this place may lie {place} from the foot, but the body may be only {length} long"
            ),
            FaultKind::BeyondPart { place, length } => write!(
                formatter,
                "this place lies {place} from the beginning of a part that is only {length} long"
            ),
            FaultKind::Contradiction { why } | FaultKind::Worked { why, .. } => {
                write!(formatter, "{why}")
            }
            FaultKind::Reserved { name, means } => write!(
                formatter,
                "expected a name of its own, found \"{name}\", which already means {means}"
            ),
            FaultKind::NameTwice { symbol } => write!(
                formatter,
                "the name {symbol} already stands for something else; give this one a \"symbol\" of its own"
            ),
            FaultKind::NoSuchGiven { symbol, given } => write!(
                formatter,
                "nothing of the name {symbol} is given; given are {}",
                given.join(", ")
            ),
            FaultKind::NotTold { symbol, variant } => {
                let of = variant.map_or_else(String::new, |at| format!(" of variants[{at}]"));
                write!(
                    formatter,
                    "the statement{of} does not tell {symbol}; write {{{symbol}}} where its value belongs"
                )
            }
            FaultKind::NoWord { key } => {
                write!(formatter, "the words for \"{key}\" are missing here")
            }
            FaultKind::UnusedWord { key } => write!(
                formatter,
                "nothing uses \"{key}\"; take it out or correct its spelling"
            ),
            FaultKind::NoSuchName {
                what,
                name,
                nearest,
                known,
            } => {
                write!(formatter, "there is no {what} of the name {name}")?;
                match (nearest, known.is_empty()) {
                    (Some(nearest), _) => write!(formatter, "; is {nearest} meant?"),
                    (None, false) => write!(formatter, "; known are {}", known.join(", ")),
                    (None, true) => Ok(()),
                }
            }
            FaultKind::Flawed(flaw) => write!(formatter, "{flaw}"),
            FaultKind::Unsound(fault) => write!(formatter, "{fault}"),
        }
    }
}
