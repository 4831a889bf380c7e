//! What a learner says in words about forces: which, where, which way; and about the pivot.
//!
//! The words that are listened for stand in the catalogue of words (`statement.*`, lists parted
//! by commas), so another language brings its own; nouns of the scene are taken from the problem's
//! wording (`scene`). A line is first taken apart into mentions (`mention`, `amount`), then the
//! mentions are gathered force by force (`gather`), each force under a name (`subject`) with its own
//! place (`place`; a rough one is heard in `rough` and `share` and kept as a `stretch`) and way
//! (`way`, `angle`), and at last it is settled which force each is (`settle`).
//! Whatever is not known is passed over.

mod amount;
mod angle;
mod apposition;
mod clash;
mod direction;
mod gather;
mod group;
mod inflected;
mod mention;
mod naming;
mod pivot;
mod place;
mod rough;
mod scene;
mod settle;
mod share;
mod stretch;
mod subject;
mod tokens;
mod way;

pub use angle::Line;
pub use clash::Clash;
pub use pivot::{PivotSaid, bare_number, is_pivot, pivot_said};
pub use place::{Fit, Where, is_on, place_fits};
pub use stretch::Stretch;
pub use tokens::one_letter_off;
pub use way::{ToBody, Way, WayAsked, WayFault, WayFit, may_stay_open, way_after, way_fits};

use crate::problem::{ForceId, Problem};
use crate::text::Words;
use gather::gather;
use mention::{Mention, Reader};

/// A kind of force that nothing in the problem makes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Invention {
    /// A push square to a surface, or the push of something that does not touch the body.
    Contact,
    /// Friction.
    Friction,
    /// Air, wind, water.
    Flow,
    /// What only a moving body would feel.
    Motion,
    /// A pull where nothing is tied.
    Pull,
    /// The own weight of a body whose weight does not count.
    OwnWeight,
    /// The weight of a rope or a hinge.
    Weightless,
}

impl Invention {
    /// As the catalogue of words calls it: `talk.invented.<word>`.
    pub fn word(self) -> &'static str {
        match self {
            Invention::Contact => "contact",
            Invention::Friction => "friction",
            Invention::Flow => "flow",
            Invention::Motion => "motion",
            Invention::Pull => "pull",
            Invention::OwnWeight => "own-weight",
            Invention::Weightless => "weightless",
        }
    }
}

/// Which force a part of a statement names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Named {
    /// This one.
    Force(ForceId),
    /// A weight, and not of what.
    SomeWeight,
    /// A force, and not which.
    SomeForce,
    /// One that nothing here makes.
    Invented(Invention),
    /// A mass, which is no force.
    Mass(Option<ForceId>),
    /// The force of something that holds the body only through a rope, or through this hinge.
    Behind(Option<ForceId>),
    /// One that acts on something else.
    Elsewhere,
    /// A force and a bare noun after it, which may be its place or this force.
    OneOrTwo(ForceId),
    /// None.
    None,
}

/// What a statement says about one force.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Said {
    /// The force.
    pub named: Named,
    /// Where.
    pub place: Option<Where>,
    /// Which way.
    pub way: Option<Way>,
    /// A place, a way or a force was denied ("not down"); nothing of it is kept.
    pub denied: bool,
    /// The force itself was denied: "no weight of the mast".
    pub refused: bool,
    /// It was left open between two: "up or down".
    pub undecided: bool,
    /// Two places were said that differ.
    pub two_places: bool,
    /// The force was named by a bare noun, which may stand for a place as well: "hinge".
    pub bare: bool,
    /// It was said to push.
    pub pushes: bool,
    /// It was said to lift.
    pub lifts: bool,
    /// It was called a moment: "the torque of the hinge".
    pub moment: bool,
    /// Its size was told as well, which nobody asked yet.
    pub sized: bool,
    /// What makes it is a word that is not known here.
    pub strange: bool,
}

impl Said {
    /// A place of no force in particular.
    pub fn at(place: Where) -> Said {
        Said {
            named: Named::None,
            place: Some(place),
            way: None,
            denied: false,
            refused: false,
            undecided: false,
            two_places: false,
            bare: false,
            pushes: false,
            lifts: false,
            moment: false,
            sized: false,
            strange: false,
        }
    }
}

/// A bare noun with a direction, said where the place of `open` is asked: true if it may be that
/// place. "Hinge, down" of a weight then establishes no force of the hinge.
pub fn may_be_a_place(problem: &Problem, open: ForceId, said: &Said) -> bool {
    let (Named::Force(noun), Some(way), None) = (said.named, said.way, said.place) else {
        return false;
    };
    said.bare && apposition::choose(problem, open, noun, way) != apposition::Second::Force
}

/// What was said where the place of `open` is asked, a side of it taken for that place: "left" of a
/// weight, which acts to no side, or where `only_place` is asked.
pub fn side_for_place(problem: &Problem, open: ForceId, said: Said, only_place: bool) -> Said {
    let (Named::None, Some(way), None) = (said.named, said.way, said.place) else {
        return said;
    };
    let rest = Way {
        right: None,
        told: clash::Telling::default(),
        ..way
    };
    let no_way = !way.told.is_aimed()
        && matches!(way_fits(problem, open, Some(way)), WayFit::Wrong(_))
        && !matches!(way_fits(problem, open, Some(rest)), WayFit::Wrong(_));
    let alone = only_place && rest == Way::default();
    let side = way.right.filter(|_| no_way || alone);
    match side.and_then(|right| stretch::side(problem, right, true)) {
        Some(stretch) => Said {
            place: Some(Where::Within(stretch)),
            way: (rest != Way::default()).then_some(rest),
            ..said
        },
        None => said,
    }
}

/// What a question is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Topic {
    /// Forces at large.
    Forces,
    /// A weight.
    Weight,
    /// A rope's pull.
    Rope,
    /// A hinge's force.
    Hinge,
    /// Moments and the pivot.
    Pivot,
    /// A force that nothing here makes.
    Invented(Invention),
}

/// A line of words, read.
#[derive(Clone, Debug, PartialEq)]
pub enum Statement {
    /// What it says, force by force, in order. Empty if no word of it is known.
    Says(Vec<Said>),
    /// It calculates, or gives a size: that belongs to a later step.
    Calculates,
    /// It asks something.
    Asks(Topic),
    /// It is only polite.
    Chats,
}

/// Reads a line of words.
pub fn read(problem: &Problem, words: &Words, line: &str) -> Statement {
    let reader = Reader::new(problem, words);
    let mentions = reader.mentions(line);
    if let Some(topic) = topic(&mentions) {
        return Statement::Asks(topic);
    }
    if mention::calculates(&mentions, line) {
        return Statement::Calculates;
    }
    let said = gather(problem, &mentions);
    let known = |said: &Said| {
        said.named != Named::None || said.place.is_some() || said.way.is_some() || said.denied
    };
    if said.iter().any(known) {
        return Statement::Says(said.into_iter().filter(known).collect());
    }
    let later = |mention: &Mention| {
        matches!(
            mention,
            Mention::Number(_) | Mention::Newtons | Mention::Quantity | Mention::Moment
        )
    };
    if mentions.iter().any(later) {
        return Statement::Calculates;
    }
    if mentions.contains(&Mention::Chat) {
        return Statement::Chats;
    }
    Statement::Says(Vec::new())
}

/// What a line asks about, if it opens like a question. "Why the hinge?" names no force.
fn topic(mentions: &[Mention]) -> Option<Topic> {
    let first = mentions
        .iter()
        .find(|mention| !matches!(mention, Mention::Filler | Mention::Chat))?;
    if !matches!(first, Mention::Asks | Mention::Why) {
        return None;
    }
    let why = *first == Mention::Why;
    let of = |mention: &Mention| match mention {
        Mention::Moment => Some(Topic::Pivot),
        Mention::Hinge | Mention::Force(ForceId::Support(_)) if why => Some(Topic::Pivot),
        Mention::Hinge | Mention::Reaction | Mention::Force(ForceId::Support(_)) => {
            Some(Topic::Hinge)
        }
        Mention::Rope | Mention::Pull | Mention::Force(ForceId::Rope(_)) => Some(Topic::Rope),
        Mention::Weight
        | Mention::OwnWeight
        | Mention::Mass(_)
        | Mention::Earth
        | Mention::Body
        | Mention::Force(_) => Some(Topic::Weight),
        Mention::Invented(kind) => Some(Topic::Invented(*kind)),
        _ => None,
    };
    Some(mentions.iter().find_map(of).unwrap_or(Topic::Forces))
}
