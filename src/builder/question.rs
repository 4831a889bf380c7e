//! The questions, their order, and what an answer changes.

use super::Asked;
use super::draft::{Carried, Draft, Fixing, Spot, Stance, share};
use super::hold::{Hold, Way};
use super::read::{Wanted, choice, measure, noun};
use crate::problem::{Reference, Side};
use crate::text::{Prose, Slot, Words};
use crate::units::Dimension;
use std::f64::consts::{FRAC_PI_2, PI};

/// The most holds besides the hinge, so that one too many can be told.
const MOST_HOLDS: usize = 3;
/// The most loads.
const MOST_LOADS: usize = 4;
/// The longest body, in metres, and the heaviest thing, in kilograms.
const LONGEST: f64 = 1000.0;
const HEAVIEST: f64 = 1e6;

/// What is asked next.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Question {
    /// What the body is called.
    Body,
    /// How long it is.
    Length,
    /// Its mass, or that its own weight does not count.
    Mass,
    /// Level or tilted.
    Stance,
    /// The line from which its angle is measured.
    AngleFrom,
    /// Its angle.
    Angle,
    /// To which side its tip lies.
    Towards,
    /// A hinge, a built-in end, or neither.
    Fixing,
    /// Where that is.
    FixedAt,
    /// A rope or a prop.
    Hold,
    /// Where that acts.
    HoldAt,
    /// Which way a rope runs.
    RopeWay,
    /// The line from which the rope's angle is measured.
    RopeFrom,
    /// The rope's angle.
    RopeAngle,
    /// To which side the rope runs.
    RopeSide,
    /// Whether something else holds it.
    MoreHolds,
    /// What it carries, or nothing more.
    Load,
    /// The mass of that.
    LoadMass,
    /// Where that is.
    LoadAt,
    /// Whether it hangs or stands.
    LoadHow,
}

impl Question {
    /// The first thing that is not told yet.
    pub(super) fn next(draft: &Draft) -> Option<Question> {
        Question::of_body(draft)
            .or_else(|| Question::of_hold(draft))
            .or_else(|| Question::of_load(draft))
    }

    fn of_body(draft: &Draft) -> Option<Question> {
        let open = [
            (draft.noun.is_none(), Question::Body),
            (draft.length.is_none(), Question::Length),
            (draft.mass.is_none(), Question::Mass),
            (draft.stance.is_none(), Question::Stance),
        ];
        if let Some((_, question)) = open.into_iter().find(|(open, _)| *open) {
            return Some(question);
        }
        match &draft.stance {
            Some(Stance::Tilted { from: None, .. }) => return Some(Question::AngleFrom),
            Some(Stance::Tilted { angle: None, .. }) => return Some(Question::Angle),
            _ => {}
        }
        match (&draft.towards, draft.fixing, &draft.fixed_at) {
            (None, ..) => Some(Question::Towards),
            (_, None, _) => Some(Question::Fixing),
            (_, Some(Fixing::Hinge | Fixing::BuiltIn), None) => Some(Question::FixedAt),
            _ => None,
        }
    }

    fn of_hold(draft: &Draft) -> Option<Question> {
        if draft.no_more_holds {
            return None;
        }
        let Some(hold) = draft.holds.last() else {
            // A built-in end holds a body alone.
            return Some(match draft.fixing {
                Some(Fixing::BuiltIn) => Question::MoreHolds,
                _ => Question::Hold,
            });
        };
        if hold.spot().is_none() {
            return Some(Question::HoldAt);
        }
        let Hold::Rope { way, .. } = hold else {
            return Some(Question::MoreHolds);
        };
        match way {
            None => Some(Question::RopeWay),
            Some(Way::Aslant { from: None, .. }) => Some(Question::RopeFrom),
            Some(Way::Aslant { angle: None, .. } | Way::WithBody { angle: None }) => {
                Some(Question::RopeAngle)
            }
            Some(Way::Aslant { side: None, .. }) => Some(Question::RopeSide),
            Some(_) => Some(Question::MoreHolds),
        }
    }

    fn of_load(draft: &Draft) -> Option<Question> {
        let open = draft.loads.last().filter(|load| !load.is_whole());
        match open {
            Some(load) if load.mass.is_none() => Some(Question::LoadMass),
            Some(load) if load.spot.is_none() => Some(Question::LoadAt),
            Some(_) => Some(Question::LoadHow),
            None => {
                (!draft.no_more_loads && draft.loads.len() < MOST_LOADS).then_some(Question::Load)
            }
        }
    }

    /// True if an answer to it completed a hold or a load, so that something can be said of the whole.
    pub(super) fn completes(self, draft: &Draft) -> bool {
        match self {
            Question::HoldAt | Question::RopeWay | Question::RopeAngle | Question::RopeSide => {
                draft.holds.last().is_some_and(Hold::is_whole)
            }
            Question::MoreHolds => draft.no_more_holds,
            Question::LoadHow | Question::Load => draft.loads.last().is_none_or(Carried::is_whole),
            _ => false,
        }
    }

    fn key(self) -> &'static str {
        match self {
            Question::Body => "build.ask.body",
            Question::Length => "build.ask.length",
            Question::Mass => "build.ask.mass",
            Question::Stance => "build.ask.stance",
            Question::AngleFrom => "build.ask.angle-from",
            Question::Angle => "build.ask.angle",
            Question::Towards => "build.ask.towards",
            Question::Fixing => "build.ask.fixing",
            Question::FixedAt => "build.ask.fixed-at",
            Question::Hold => "build.ask.hold",
            Question::HoldAt => "build.ask.hold-at",
            Question::RopeWay => "build.ask.rope-way",
            Question::RopeFrom => "build.ask.rope-from",
            Question::RopeAngle => "build.ask.rope-angle",
            Question::RopeSide => "build.ask.rope-side",
            Question::MoreHolds => "build.ask.more-holds",
            Question::Load => "build.ask.load",
            Question::LoadMass => "build.ask.load-mass",
            Question::LoadAt => "build.ask.load-at",
            Question::LoadHow => "build.ask.load-how",
        }
    }

    /// The keys of what may be chosen; empty where a text or a number is typed.
    fn choice_keys(self) -> &'static [&'static str] {
        match self {
            Question::Stance => &["build.level", "build.tilted"],
            Question::AngleFrom | Question::RopeFrom => {
                &["build.from-horizontal", "build.from-vertical"]
            }
            Question::Towards | Question::RopeSide => &["build.right", "build.left"],
            Question::Fixing => &["build.hinge", "build.built-in", "build.neither"],
            Question::Hold => &["build.rope", "build.prop"],
            Question::RopeWay => &[
                "build.way-up",
                "build.way-left",
                "build.way-right",
                "build.way-aslant",
                "build.way-body",
            ],
            Question::MoreHolds => &["build.no-more", "build.rope", "build.prop"],
            Question::LoadHow => &["build.hangs", "build.stands"],
            _ => &[],
        }
    }

    pub(super) fn choices(self, words: &Words) -> Vec<Prose> {
        let keys = self.choice_keys().iter();
        keys.map(|key| words.say(key, &[])).collect()
    }

    fn example(self) -> Option<&'static str> {
        match self {
            Question::Body => Some("build.example.body"),
            Question::Length => Some("build.example.length"),
            Question::Mass => Some("build.example.mass"),
            Question::Angle | Question::RopeAngle => Some("build.example.angle"),
            Question::FixedAt => Some("build.example.fixed-at"),
            Question::HoldAt | Question::LoadAt => Some("build.example.place"),
            Question::Load => Some("build.example.load"),
            Question::LoadMass => Some("build.example.load-mass"),
            _ => None,
        }
    }

    /// The question in words.
    pub(super) fn asked(self, draft: &Draft, words: &Words) -> Asked {
        let load = draft.loads.last().map_or("", |load| load.noun.as_str());
        let hold = draft.holds.last().map_or("build.noun.rope", Hold::noun);
        let fixing = match draft.fixing {
            Some(Fixing::BuiltIn) => "build.noun.built-in",
            _ => "build.noun.hinge",
        };
        let slots = [
            ("body", Slot::Word(draft.body().to_owned())),
            ("fixing", Slot::Word(words.word(fixing))),
            ("load", Slot::Word(load.to_owned())),
            ("hold", Slot::Word(words.word(hold))),
        ];
        let key = match (self, draft.loads.is_empty(), draft.is_tilted()) {
            (Question::Load, false, _) => "build.ask.load-more",
            (Question::Towards, _, false) => "build.ask.towards-level",
            (Question::Hold, ..) if draft.fixing == Some(Fixing::Nothing) => "build.ask.hold-first",
            _ => self.key(),
        };
        Asked {
            prompt: words.say(key, &slots),
            choices: self.choices(words),
            example: match self.example() {
                Some(key) => words.say(key, &slots),
                None => Prose::plain(""),
            },
        }
    }

    /// The draft with this answer.
    pub(super) fn take(self, draft: &Draft, typed: &str, words: &Words) -> Result<Draft, Prose> {
        if typed.trim().is_empty() && self != Question::Load {
            return Err(words.say("build.fault.empty", &[]));
        }
        let mut draft = draft.clone();
        match self {
            Question::Body => draft.noun = Some(other_noun(&draft, typed, words)?),
            Question::Length => {
                let wanted = above_zero(Dimension::LENGTH, LONGEST);
                draft.length = Some(measure(typed, wanted, words)?);
            }
            Question::Mass => draft.mass = Some(mass_or_none(typed, words)?),
            Question::Load => match is_nothing(typed, words) {
                true => draft.no_more_loads = true,
                false => {
                    let noun = other_noun(&draft, typed, words)?;
                    draft.loads.push(Carried {
                        noun,
                        ..Carried::default()
                    });
                }
            },
            Question::LoadMass | Question::LoadAt => self.take_of_load(&mut draft, typed, words)?,
            Question::Angle => {
                let angle = measure(typed, above_zero(Dimension::ANGLE, FRAC_PI_2), words)?;
                if let Some(Stance::Tilted { angle: open, .. }) = &mut draft.stance {
                    *open = Some(angle);
                }
            }
            Question::FixedAt => draft.fixed_at = Some(spot(&draft, typed, words)?),
            Question::HoldAt => {
                let at = spot(&draft, typed, words)?;
                if let Some(hold) = draft.holds.last_mut() {
                    hold.set_spot(at);
                }
            }
            Question::RopeAngle => take_rope_angle(&mut draft, typed, words)?,
            _ => {
                let place = choice(typed, &self.choices(words), words)?;
                let full = draft.holds.len() >= MOST_HOLDS;
                if self == Question::MoreHolds && place > 0 && full {
                    return Err(words.say("build.too-many", &[]));
                }
                self.choose(&mut draft, place);
            }
        }
        Ok(draft)
    }

    fn take_of_load(self, draft: &mut Draft, typed: &str, words: &Words) -> Result<(), Prose> {
        let at = match self {
            Question::LoadAt => Some(spot(draft, typed, words)?),
            _ => None,
        };
        let Some(load) = draft.loads.last_mut() else {
            return Ok(());
        };
        match at {
            Some(at) => load.spot = Some(at),
            None => {
                let wanted = above_zero(Dimension::MASS, HEAVIEST);
                load.mass = Some(measure(typed, wanted, words)?);
            }
        }
        Ok(())
    }

    /// What the choice at this place, from 0, changes.
    fn choose(self, draft: &mut Draft, place: usize) {
        let reference = match place {
            0 => Reference::Horizontal,
            _ => Reference::Vertical,
        };
        let side = match place {
            0 => Side::Right,
            _ => Side::Left,
        };
        match self {
            Question::Stance => {
                draft.stance = Some(match place {
                    0 => Stance::Level,
                    _ => Stance::Tilted {
                        from: None,
                        angle: None,
                    },
                });
            }
            Question::AngleFrom => {
                if let Some(Stance::Tilted { from, .. }) = &mut draft.stance {
                    *from = Some(reference);
                }
            }
            Question::Towards => draft.towards = Some(side),
            Question::Fixing => {
                draft.fixing = Some(match place {
                    0 => Fixing::Hinge,
                    1 => Fixing::BuiltIn,
                    _ => Fixing::Nothing,
                });
            }
            Question::Hold => draft.holds.push(held(place)),
            Question::MoreHolds => match place.checked_sub(1) {
                Some(place) => draft.holds.push(held(place)),
                None => draft.no_more_holds = true,
            },
            Question::LoadHow => {
                if let Some(load) = draft.loads.last_mut() {
                    load.stands = Some(place == 1);
                }
            }
            _ => self.choose_way(draft, place, reference, side),
        }
    }

    fn choose_way(self, draft: &mut Draft, place: usize, reference: Reference, to: Side) {
        let Some(Hold::Rope { way, .. }) = draft.holds.last_mut() else {
            return;
        };
        match (self, way) {
            (Question::RopeWay, way) => {
                *way = Some(match place {
                    0 => Way::Up,
                    1 => Way::Level(Side::Left),
                    2 => Way::Level(Side::Right),
                    3 => Way::Aslant {
                        from: None,
                        angle: None,
                        side: None,
                    },
                    _ => Way::WithBody { angle: None },
                });
            }
            (Question::RopeFrom, Some(Way::Aslant { from, .. })) => *from = Some(reference),
            (Question::RopeSide, Some(Way::Aslant { side, .. })) => *side = Some(to),
            _ => {}
        }
    }
}

fn above_zero(dimension: Dimension, most: f64) -> Wanted {
    Wanted {
        dimension,
        between: (0.0, most),
    }
}

fn held(place: usize) -> Hold {
    match place {
        0 => Hold::Rope {
            spot: None,
            way: None,
        },
        _ => Hold::Prop { spot: None },
    }
}

fn is_nothing(typed: &str, words: &Words) -> bool {
    let text = typed.trim().to_lowercase();
    text.is_empty()
        || words
            .word("build.nothing")
            .split(", ")
            .any(|word| word == text)
}

fn mass_or_none(typed: &str, words: &Words) -> Result<Option<super::read::Measure>, Prose> {
    if is_nothing(typed, words) {
        return Ok(None);
    }
    measure(typed, above_zero(Dimension::MASS, HEAVIEST), words).map(Some)
}

/// A noun that nothing else in the problem has.
fn other_noun(draft: &Draft, typed: &str, words: &Words) -> Result<String, Prose> {
    let noun = noun(typed, words)?;
    let is_it = |other: &str| other.eq_ignore_ascii_case(&noun);
    let parts = [
        "build.noun.hinge",
        "build.noun.built-in",
        "build.noun.rope",
        "build.noun.prop",
    ];
    let places = ["build.place.foot", "build.place.middle", "build.place.tip"];
    let is_place = |key: &&str| words.word(key).split(", ").any(is_it);
    if places.iter().any(is_place) || is_nothing(&noun, words) {
        return Err(words.say("build.fault.noun", &[]));
    }
    let taken = is_it(draft.body())
        || draft.loads.iter().any(|load| is_it(&load.noun))
        || parts.iter().any(|key| is_it(&words.word(key)));
    match taken {
        false => Ok(noun),
        true => Err(words.say("build.fault.noun-taken", &[("noun", Slot::Word(noun))])),
    }
}

/// A place on the body: a word for an end or the middle, or a distance from the foot.
fn spot(draft: &Draft, typed: &str, words: &Words) -> Result<Spot, Prose> {
    let text = typed.trim().to_lowercase();
    let named = [
        ("build.place.foot", Spot::Foot),
        ("build.place.middle", Spot::Middle),
        ("build.place.tip", Spot::Tip),
    ];
    for (key, spot) in named {
        if words.word(key).split(", ").any(|word| word == text) {
            return Ok(spot);
        }
    }
    let length = draft.length.as_ref();
    let most = length.map_or(LONGEST, |length| length.value);
    // The tip itself may be told by its distance.
    let wanted = above_zero(Dimension::LENGTH, most * (1.0 + 1e-9));
    let spot = Spot::At(measure(typed, wanted, words)?);
    match length.map(|length| share(&spot, length)) {
        Some(share) if share >= 1.0 - 1e-9 => Ok(Spot::Tip),
        _ => Ok(spot),
    }
}

fn take_rope_angle(draft: &mut Draft, typed: &str, words: &Words) -> Result<(), Prose> {
    let Some(Hold::Rope { way: Some(way), .. }) = draft.holds.last_mut() else {
        return Ok(());
    };
    let most = match way {
        Way::WithBody { .. } => PI,
        _ => FRAC_PI_2,
    };
    let measured = measure(typed, above_zero(Dimension::ANGLE, most), words)?;
    match way {
        Way::Aslant { angle, .. } | Way::WithBody { angle } => *angle = Some(measured),
        Way::Up | Way::Level(_) => {}
    }
    Ok(())
}
