//! Which way a force or a part of it points, told beside its value.

use super::Session;
use crate::hint::{on_body, way_word};
use crate::judge::statement::{Clash, Way, WayFault};
use crate::judge::{Evidence, Judgement, Truth};
use crate::key::{Axis, Nature, Part, StepId};
use crate::problem::ForceId;
use crate::reading::{self, read};
use crate::text::{Prose, Slot};
use crate::units::Dimension;

/// The axis along which a way lies, and whether it points with it; `None` for an oblique one.
pub(super) fn axis_of((x, y): (f64, f64)) -> Option<(Axis, bool)> {
    let along = |part: f64| part.abs() > 1.0 - 1e-9;
    match (along(x), along(y)) {
        (true, _) => Some((Axis::Horizontal, x > 0.0)),
        (_, true) => Some((Axis::Vertical, y > 0.0)),
        _ => None,
    }
}

/// The way that is turned round.
fn opposite(way: reading::Way) -> reading::Way {
    match way {
        reading::Way::Up => reading::Way::Down,
        reading::Way::Down => reading::Way::Up,
        reading::Way::Left => reading::Way::Right,
        reading::Way::Right => reading::Way::Left,
        reading::Way::Clockwise => reading::Way::Anticlockwise,
        reading::Way::Anticlockwise => reading::Way::Clockwise,
    }
}

impl Session {
    /// The way in which a part of a support's force points, as it stands; of a joint's on the body
    /// for which it is counted.
    pub(super) fn way_of(&self, target: StepId) -> Prose {
        let Some(axis) = target.along() else {
            return Prose::default();
        };
        let positive = self
            .state
            .standing
            .get(&target)
            .is_some_and(|own| own.function[0] > 0.0);
        let way = self.words.say(way_word(axis, positive), &[]);
        on_body(&self.words, &self.key, target, way)
    }

    /// `|Hx| = 361 N to the left`: a size told with its way is the part told so. The bars are left
    /// out, and every place in the line stays; `None` for other lines.
    pub(super) fn size_with_way(&self, line: &str) -> Option<String> {
        let start = line.len() - line.trim_start().len();
        let (name, rest) = line[start..].strip_prefix('|')?.split_once('|')?;
        let value = rest.trim_start().strip_prefix(['=', '≈'])?.trim_start();
        let is_size = value.starts_with(|c: char| c.is_ascii_digit()) && !value.contains('|');
        if !is_size || !self.is_symbol(name.trim()) {
            return None;
        }
        let without = self.without_body(value).map(|(rest, _)| rest);
        let told = without.as_deref().unwrap_or(value).trim_end();
        let says_way = told.ends_with(['←', '→', '↑', '↓']) || self.way_behind(told).is_some();
        says_way.then(|| format!("{} {name} {rest}", &line[..start]))
    }

    /// A wrong value of hers told once more with the way that it does not have, refused: that of her
    /// line, or where she told none there, that of her value. `None` for other lines.
    pub(super) fn own_turned_again(&self, line: &str, found: &Judgement) -> Option<Judgement> {
        let again = found.own_again_of()?;
        let freely = self.state.freely.as_ref()?;
        let mut lines = freely.lines.iter();
        let first = lines.find(|(at, ..)| *at == again);
        let (before, body) = first.map_or_else(Default::default, |(_, first, _)| {
            (self.ways_behind(first), self.body_behind(first))
        });
        let said = &found.evidence.ways;
        let here = self.body_behind(line);
        // What acts on two bodies acts one way on each.
        let on_two = self.acts_on_several(found.target);
        let known = !on_two || body.is_some() && here.is_some();
        let turned = match before.is_empty() || !known {
            true => {
                let (names, own_values) = (self.names(), self.own_values());
                let mut board = self.board(&names, &own_values);
                board.on_body = here.as_deref();
                !said.is_empty() && found.is_turned_again(&board)
            }
            false if on_two && body != here => said.iter().any(|way| before.contains(way)),
            false => said.iter().any(|way| before.contains(&opposite(*way))),
        };
        turned.then(|| Judgement {
            truth: Truth::DoesNotHold,
            proved: false,
            remarks: Vec::new(),
            evidence: Evidence {
                number: found.evidence.number,
                ways: found.evidence.ways.clone(),
                turned_again: Some(again),
                ..Evidence::default()
            },
            ..found.clone()
        })
    }

    /// True for a force with a way of its own on each of several bodies.
    fn acts_on_several(&self, step: StepId) -> bool {
        let Some(general) = self.key.general.as_ref() else {
            return false;
        };
        let ends = general.ends.get(&step);
        general.between.contains_key(&step) || ends.is_some_and(|ends| ends.len() > 1)
    }

    /// The noun of the body that is said behind a line.
    fn body_behind(&self, line: &str) -> Option<String> {
        self.without_bodies(line).1.into_iter().next()
    }

    /// The ways that are said behind a line.
    pub(super) fn ways_behind(&self, line: &str) -> Vec<reading::Way> {
        let (line, _) = self.without_bodies(line);
        let names = self.names();
        let readings = read(&line, names.vocabulary()).unwrap_or_default();
        let first = readings.into_iter().next();
        let remarks = first.map_or_else(Vec::new, |first| first.remarks);
        let way = |remark: reading::Remark| match remark {
            reading::Remark::Direction { way, .. } => Some(way),
            _ => None,
        };
        remarks.into_iter().filter_map(way).collect()
    }

    /// That a part of a support's force points so, once it stands; nothing of others, and of a part
    /// that is none.
    pub(super) fn points(&self, target: StepId) -> Prose {
        let stands = self.state.standing.get(&target);
        let is_some = stands.is_some_and(|own| own.function[0].abs() > 1e-9);
        // A hinge between two bodies points one way for each: there the drawing tells.
        let is_part = matches!(target, StepId::Reaction(_, Part::Along(_)));
        let (true, true, Some(step)) = (is_part, is_some, self.key.step(target)) else {
            return Prose::default();
        };
        let slots = [
            ("symbol", Slot::Name(step.symbol.shown())),
            ("way", Slot::Prose(self.way_of(target))),
        ];
        self.words.say("remark.points", &slots)
    }

    /// That the size holds and the way does not, and where to look for it.
    pub(super) fn wrong_way_told(&self, target: StepId) -> Prose {
        let force = target.force().map(|force| self.force_title(force));
        match (target, force) {
            (StepId::Reaction(_, Part::Direction) | StepId::Found(Nature::Direction, _), _) => {
                self.words.say("talk.angle-points", &[])
            }
            (StepId::Reaction(_, Part::Size) | StepId::Found(Nature::Size, _), _) => {
                self.words.say("talk.way-wrong-size", &[])
            }
            (target, _) if target.is_weight() => self.words.say("talk.way-wrong-weight", &[]),
            (target, Some(force)) if target.along().is_none() => {
                let slots = [("force", Slot::Word(force))];
                self.words.say("talk.way-wrong-force", &slots)
            }
            (target, _) if self.is_couple(target) => self.words.say("talk.way-wrong-turn", &[]),
            _ => self.words.say("talk.way-wrong", &[]),
        }
    }

    /// Why the way told for a force is not its way.
    pub(super) fn wrong_way(&self, force: ForceId, fault: WayFault) -> Prose {
        let key = match (force, fault) {
            _ if self.is_a_weight(force) => "talk.weight-way-wrong",
            (_, WayFault::Angle) => "talk.angle-way-wrong",
            (ForceId::Rope(_), _) => "talk.rope-way-wrong",
            _ => "talk.other-way-wrong",
        };
        self.words.say(key, &self.force_slots(force))
    }

    /// That two ways of one force were told, which cannot both be: which they are.
    pub(super) fn two_ways(&self, force: ForceId, way: Way, clash: Clash) -> Prose {
        let upright = way.up.map(|up| way_word(Axis::Vertical, up));
        let level = way.right.map(|right| way_word(Axis::Horizontal, right));
        let word = |key: &str| self.words.word(key);
        let other = word(match (clash, way.up) {
            (Clash::Level, _) => "talk.way-level",
            (Clash::Upright, _) => "talk.way-upright",
            (Clash::Straight, Some(false)) => "talk.way-straight-down",
            (Clash::Straight, _) => "talk.way-straight-up",
        });
        let [force, _] = self.force_slots(force);
        let other = ("other", Slot::Word(other));
        if let (Some(upright), Some(level)) = (upright, level) {
            let upright = ("upright", Slot::Word(word(upright)));
            let level = ("level", Slot::Word(word(level)));
            let slots = [force, upright, level, other];
            return self.words.say("talk.two-ways-sides", &slots);
        }
        let side = upright.or(level).filter(|_| !way.along);
        let one = word(side.unwrap_or("talk.way-along"));
        let slots = [force, ("one", Slot::Word(one)), other];
        self.words.say("talk.two-ways", &slots)
    }

    fn is_couple(&self, target: StepId) -> bool {
        let step = self.key.step(target);
        step.is_some_and(|step| step.dimension == Dimension::MOMENT)
    }
}
