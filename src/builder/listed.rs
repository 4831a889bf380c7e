//! What was answered so far, one short row for each answer.

use super::draft::{Draft, Spot, Stance};
use super::hold::{Hold, Way};
use super::question::Question;
use super::read::{Measure, choice};
use crate::text::{Prose, Words};

/// An answer as it was taken.
#[derive(Clone, Debug, PartialEq)]
pub struct Listed {
    /// What was asked, in a word or two.
    pub label: Prose,
    /// What was answered: a name, a value with its unit, or what was chosen.
    pub told: String,
    /// True if it belongs to what was told before it.
    pub detail: bool,
}

impl Question {
    /// The answer, told from the draft that it made.
    pub(super) fn listed(self, draft: &Draft, typed: &str, words: &Words) -> Listed {
        let told = self.told(draft, words);
        Listed {
            label: words.say(self.label(), &[]),
            told: told.unwrap_or_else(|| chosen(&self.choices(words), typed, words)),
            detail: !matches!(
                self,
                Question::Body
                    | Question::Stance
                    | Question::Fixing
                    | Question::Hold
                    | Question::MoreHolds
                    | Question::Load
            ),
        }
    }

    fn label(self) -> &'static str {
        match self {
            Question::Body => "build.label.body",
            Question::Length => "build.label.length",
            Question::Mass | Question::LoadMass => "build.label.mass",
            Question::Stance => "build.label.stance",
            Question::AngleFrom | Question::RopeFrom => "build.label.from",
            Question::Angle | Question::RopeAngle => "build.label.angle",
            Question::Towards => "build.label.towards",
            Question::Fixing => "build.label.fixing",
            Question::FixedAt | Question::HoldAt | Question::LoadAt => "build.label.at",
            Question::Hold | Question::MoreHolds => "build.label.hold",
            Question::RopeWay => "build.label.rope-way",
            Question::RopeSide => "build.label.rope-side",
            Question::Load => "build.label.load",
            Question::LoadHow => "build.label.load-how",
        }
    }

    /// What was typed, as it was read; `None` where something was chosen.
    fn told(self, draft: &Draft, words: &Words) -> Option<String> {
        let (hold, load) = (draft.holds.last(), draft.loads.last());
        let written = |measure: &Measure| measure.written.clone();
        match self {
            Question::Body => draft.noun.clone(),
            Question::Length => draft.length.as_ref().map(written),
            Question::Mass => Some(match draft.mass.as_ref()? {
                Some(mass) => written(mass),
                None => words.word("build.weightless"),
            }),
            Question::Angle => match draft.stance.as_ref()? {
                Stance::Tilted { angle, .. } => angle.as_ref().map(written),
                Stance::Level => None,
            },
            Question::FixedAt => Some(place(draft.fixed_at.as_ref()?, words)),
            Question::HoldAt => Some(place(hold?.spot()?, words)),
            Question::RopeAngle => match hold? {
                Hold::Rope {
                    way: Some(Way::Aslant { angle, .. } | Way::WithBody { angle }),
                    ..
                } => angle.as_ref().map(written),
                _ => None,
            },
            Question::Load if draft.no_more_loads => Some(words.word("build.nothing-more")),
            Question::Load => Some(load?.noun.clone()),
            Question::LoadMass => load?.mass.as_ref().map(written),
            Question::LoadAt => Some(place(load?.spot.as_ref()?, words)),
            _ => None,
        }
    }
}

/// The choice without what is told behind a colon.
fn chosen(choices: &[Prose], typed: &str, words: &Words) -> String {
    let place = choice(typed, choices, words).unwrap_or(0);
    let told = choices.get(place).map(ToString::to_string);
    let told = told.unwrap_or_default();
    told.split(':').next().unwrap_or_default().to_owned()
}

fn place(spot: &Spot, words: &Words) -> String {
    let key = match spot {
        Spot::Foot => "build.place.foot",
        Spot::Middle => "build.place.middle",
        Spot::Tip => "build.place.tip",
        Spot::At(measure) => return measure.written.clone(),
    };
    let list = words.word(key);
    list.split(',').next().unwrap_or_default().to_owned()
}
