//! What follows in a free working from a wrong line that gives no value by itself: a relation
//! between unknowns, or a force that is left out wherever it would stand.

use super::Session;
use crate::diagnosis::Diagnosis;
use crate::judge::{
    Board, Judgement, Memo, Own, Remark, Standing, Truth, follows_relation, is_of_a_kind,
    own_of_wrong, says_as_own,
};
use crate::key::{Axis, Part, StepId};
use crate::mistakes::Instance;
use crate::units::to_figures;
use std::collections::BTreeMap;

/// Mistakes in a force itself, which is nowhere or of another size: who makes one in the moments and
/// in the forces alike is true to her own drawing.
const OF_A_FORCE: [&str; 4] = [
    "own-weight-left-out",
    "force-forgotten",
    "mass-for-weight",
    "divided-by-g",
];

/// Figures of a value that she leaves as a form.
const SOLVED: u8 = 5;

/// Her value is that of such a working if it is off by no more than this share.
const SAME: f64 = 0.005;

/// The value of a form agrees with the right one up to this share of it.
const FAR: f64 = 0.1;

impl Session {
    /// A line that does not hold and follows from a wrong relation of hers.
    pub(super) fn by_own_relation(&mut self, line: &str, found: &Judgement) -> Option<Judgement> {
        // Of `A = B = 294 N` the names are no form that comes to a value.
        let names_alone = || {
            let (names, _) = line.rsplit_once('=').unwrap_or((line, ""));
            !names.contains(|c: char| c.is_ascii_digit() || "+-−*·/(".contains(c))
        };
        // Of `1.15 N = 117.6` the first reading is all numbers, and another one of a force N.
        let numbers = || {
            let readings = crate::reading::read(line, self.names().vocabulary());
            readings.is_ok_and(|all| {
                let mut sides = all.iter().take(1).flat_map(|first| &first.sides);
                all.len() > 1 && sides.all(|side| side.names().is_empty())
            })
        };
        let chain = !found.evidence.broken_link || names_alone() || numbers();
        let refused = found.truth == Truth::DoesNotHold && chain || self.is_far(found);
        let freely = self.state.freely.as_ref().filter(|_| refused)?;
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        let holds = |truth: &str| matches!(truth, "holds" | "rounded");
        let lines = &freely.lines;
        // A later attempt at the same takes the place of an earlier one, right or wrong.
        let mended = |at: usize, wrong: &str| {
            let mut later = lines.iter().filter(|(number, ..)| *number > at);
            later.any(|(_, line, truth)| {
                (holds(truth) || *truth == "wrong") && is_of_a_kind(&board, wrong, line)
            })
        };
        // Of what is told with a way the sign is not that of its number.
        let with_way = |line: &str| self.way_behind(line).is_some();
        let told = self.as_counted(line, found);
        // What followed from a value that was mended gives nothing any more.
        let gone = |at: &usize| freely.void.contains_key(at) || freely.fallen.contains_key(at);
        // Of a wrong relation the right value of one unknown mends nothing: it gives the other.
        let spent = |at: &usize, line: &str| {
            freely.fallen.contains_key(at)
                || freely.void.contains_key(at) && !board.relates_unknowns(line)
        };
        let wrong: Vec<&str> = lines
            .iter()
            .filter(|(at, line, truth)| *truth == "wrong" && !spent(at, line) && !mended(*at, line))
            .filter(|(_, line, _)| !with_way(line))
            .map(|(_, line, _)| line.as_str())
            .collect();
        let right = lines.iter().filter(|(.., truth)| holds(truth));
        let mut right: Vec<&str> = right.map(|(_, line, _)| line.as_str()).collect();
        // With the unknown that she has not told yet as her moments would give it.
        let unknown = self.unknown_in_full();
        right.extend(unknown.as_deref());
        // What her wrong values give by her right lines, though the key would have it otherwise.
        let hers = lines
            .iter()
            .filter(|(at, _, truth)| *truth == "follows" && !gone(at));
        let hers: Vec<&str> = hers.map(|(_, line, _)| line.as_str()).collect();
        let open: Standing = self.state.standing.clone();
        let open = open.into_iter().filter(|(_, own)| own.right).collect();
        let with_open = Board {
            standing: &open,
            memo: Memo::default(),
            ..board
        };
        let all = [wrong.as_slice(), &hers].concat();
        // `P d = 88.8` is right, and with her own P it gives another d.
        let products = right.iter().copied();
        let products = products.filter(|line| board.has_product_of_own(&with_open, line));
        let given: Vec<&str> = wrong.iter().copied().chain(products).collect();
        let follows_on = |line: &str, turned: &[StepId]| {
            let with = |board: &Board<'_>, from: &[&str]| {
                let board = Board {
                    turned,
                    memo: Memo::default(),
                    ..*board
                };
                follows_relation(&board, from, &right, line)
            };
            with(&board, &given) || with(&with_open, &all)
        };
        // What she counts the other way round stands in her lines in her sense.
        let against = self.state.standing.iter().filter(|(_, own)| own.against);
        let against: Vec<StepId> = against.map(|(step, _)| *step).collect();
        let follows = |(line, _): &&(String, f64)| {
            follows_on(line, &[]) || !against.is_empty() && follows_on(line, &against)
        };
        let (_, sign) = told.iter().find(follows)?;
        let number = self.state.next_number;
        let own = own_of_wrong(&board, found, number, None);
        // Told by its size it points as her relation has it.
        let own = own.map(|own| match *sign < 0.0 {
            true => own.pointing(-1.0, number),
            false => own,
        });
        let told = found.target.is_balance() || self.names_target(found);
        Some(following(found, own.filter(|_| told)))
    }

    /// A line that tells the unknown of a lesson as it is right, where it does not stand yet.
    fn unknown_in_full(&self) -> Option<String> {
        let unknown = self.key.unknown().filter(|_| !self.is_general())?;
        let open = !self.state.standing.contains_key(&unknown);
        let none = &BTreeMap::new();
        let right = self.key.samples(unknown, &self.sampling, none);
        let right = right.filter(|_| open)?[0];
        let value = to_figures(right, SOLVED);
        Some(format!("{} = {value} N", self.unknown_symbol()))
    }

    /// What a line may say of a part in the sense of the axis: of a value with a way behind it the number
    /// with the sign of that way; of a level part in a lesson, along whose axis the rope alone acts
    /// against the hinge, the size as well. With each a sign, below zero where her value points
    /// against the axis though it was told as a size.
    fn as_counted(&self, line: &str, found: &Judgement) -> Vec<(String, f64)> {
        let size = |text: &str| {
            let (name, value) = text.split_once('=')?;
            let value = value.trim();
            let starts = value.starts_with(|c: char| c.is_ascii_digit());
            let alone = |c: char| c.is_alphanumeric() || matches!(c, '.' | ',' | ' ');
            let is_value = starts && value.chars().all(alone);
            is_value.then(|| (format!("{name}= {value}"), format!("{name}= -{value}")))
        };
        let level = match found.target {
            step @ StepId::Reaction(_, Part::Along(Axis::Horizontal)) => {
                let (names, own_values) = (self.names(), self.own_values());
                let right = self.board(&names, &own_values).right(step);
                right.map(|right| right[0].signum())
            }
            _ => None,
        };
        let Some((told, _)) = self.way_behind(line) else {
            let Some((sign, (plain, turned))) = level.zip(size(line)) else {
                return vec![(line.to_owned(), 1.0)];
            };
            return vec![(plain, sign), (turned, sign)];
        };
        let said = found.target.along().and_then(|axis| found.said_along(axis));
        let (Some(said), Some((plain, turned))) = (said, size(told)) else {
            return Vec::new();
        };
        let all = match level {
            None if said > 0.0 => vec![plain],
            None => vec![turned],
            Some(right) if right * said > 0.0 => vec![plain, turned],
            Some(_) => Vec::new(),
        };
        all.into_iter().map(|line| (line, 1.0)).collect()
    }

    /// True for a noted form whose value agrees with one of her own, far from the right one.
    pub(super) fn is_far(&self, found: &Judgement) -> bool {
        let unseen = |remark: &Remark| matches!(remark, Remark::NotSeen | Remark::ByChance);
        let unseen = found.truth == Truth::Noted && found.remarks.iter().any(unseen);
        let number = found.evidence.number.filter(|_| unseen);
        let (names, own_values) = (self.names(), self.own_values());
        let right = self.board(&names, &own_values).right(found.target);
        number.zip(right).is_some_and(|(number, right)| {
            (number.value.abs() - right[0].abs()).abs() > FAR * right[0].abs()
        })
    }

    /// A line whose numbers cannot be traced and that follows from her right lines: simplified,
    /// solved, or two of them put together.
    pub(super) fn by_right_relation(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let unseen_way = |remark: &Remark| *remark == Remark::NotSeen;
        let unseen = found.truth == Truth::Noted && found.remarks.iter().any(unseen_way);
        let freely = self.state.freely.as_ref().filter(|_| unseen)?;
        let holds = |truth: &str| matches!(truth, "holds" | "rounded");
        let right = freely.lines.iter().filter(|(.., truth)| holds(truth));
        let right: Vec<String> = right.map(|(_, line, _)| line.clone()).collect();
        let right: Vec<&str> = right.iter().map(String::as_str).collect();
        let follows = self.with_no_force_found(|session| {
            let (names, own_values) = (session.names(), session.own_values());
            let board = session.board(&names, &own_values);
            let curved = || session.is_general() && says_as_own(&board, line, &right);
            follows_relation(&board, &right, &right, line) || curved()
        });
        if !follows {
            return None;
        }
        // What it solves for is found.
        if let Some(mut told) = self.by_value_told(asked, line, found) {
            told.remarks.retain(|remark| !unseen_way(remark));
            return Some(told);
        }
        // What rests on an unknown that is not found yet has no value to show: that would tell it.
        if self.rests_on_unfound(found) {
            return Some(Judgement {
                layout: found.layout.clone(),
                ..Judgement::noted_true(found.target)
            });
        }
        let (name, _) = line.split_once('=')?;
        let number = found
            .evidence
            .number
            .filter(|_| self.is_symbol(name.trim()));
        let value = number.and_then(|number| {
            let value = to_figures(number.value, SOLVED);
            let told = self.judged_in_force(asked, &format!("{name} = {value}"));
            told.truth.holds().then_some(told)
        });
        // Of a form no unit is asked.
        let value = value.map(|mut told| {
            told.remarks.retain(|remark| *remark != Remark::UnitMissing);
            told
        });
        let judgement = value.unwrap_or_else(|| Judgement::noted_true(found.target));
        Some(Judgement {
            layout: found.layout.clone(),
            ..judgement
        })
    }

    /// True for a line in which an unknown stands, or what is made of one, that is not found rightly yet.
    fn rests_on_unfound(&self, found: &Judgement) -> bool {
        let right = |id: &StepId| self.state.standing.get(id).is_some_and(|own| own.right);
        self.rests_on_other(found, &|id| {
            self.state.reached.contains_key(id) || right(id)
        })
    }

    /// True for a line whose value rests on an unknown of which she has told no value, right or wrong: it
    /// would tell that.
    pub(super) fn would_tell_unfound(&self, found: &Judgement) -> bool {
        let told = |id: &StepId| self.state.standing.contains_key(id);
        self.rests_on_other(found, &|id| self.state.reached.contains_key(id) || told(id))
    }

    /// True for a line in which another unknown stands than the known ones, or what is made of one.
    fn rests_on_other(&self, found: &Judgement, known: &dyn Fn(&StepId) -> bool) -> bool {
        let open = |id: &StepId| match id.is_unknown() {
            true => !known(id),
            false => !known(id) && self.key.open_in(*id).iter().any(|of| !known(of)),
        };
        found.evidence.rests_on.iter().any(open)
    }

    /// A force left out of the part of a support's force, or of another size in it, as it was in the
    /// balance before it.
    pub(super) fn wrong_force_again(
        &mut self,
        judgement: &Judgement,
        diagnosis: &Diagnosis,
    ) -> Option<Judgement> {
        let refused = self.is_free() && judgement.truth == Truth::DoesNotHold;
        if !refused || judgement.evidence.wrong_way {
            return None;
        }
        // A number alone is that of the same working, too.
        let shown = diagnosis.is_by_form() || judgement.evidence.alone;
        let spoken = diagnosis.spoken().filter(|_| shown);
        // What was left out here alone has the same form as what she left out everywhere.
        let like = spoken.into_iter().flat_map(|spoken| {
            let alike = spoken.alike.iter().copied();
            std::iter::once(spoken.instance).chain(alike)
        });
        let mut like = like.map(|index| &self.instances[index]);
        let spoken = like.find(|instance| self.is_her_working(instance));
        let instance = spoken.or_else(|| self.working_of_number(judgement))?;
        let part = matches!(judgement.target, StepId::Reaction(..)) || diagnosis.of_part.is_some();
        self.key.unknown().filter(|_| part)?;
        let without = &instance.key;
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        if diagnosis.of_part.is_some() {
            return Some(following(judgement, None));
        }
        let mut own = own_of_wrong(&board, judgement, self.state.next_number, None)?;
        // It points as that working has it.
        let step = judgement.target;
        let given = without.function(&self.key, step, &self.sampling, &BTreeMap::new());
        if let Some(given) = given.filter(|given| own.function[0] * given[0] < 0.0) {
            let turned = own.function.map(|value| value.abs().copysign(given[0]));
            own.function = turned;
        }
        let said = step.along().and_then(|axis| judgement.said_along(axis));
        let below_zero = judgement
            .evidence
            .number
            .is_some_and(|typed| typed.value < 0.0);
        if let (Some(said), Some(given), false) = (said, given, below_zero)
            && said * given[0] < 0.0
        {
            let mut turned = judgement.clone();
            turned.refuse_way();
            turned.evidence.turned_about = Some(own);
            return Some(turned);
        }
        Some(following(judgement, Some(own)))
    }

    /// True for a mistake in a force itself with which she found the unknown that stands.
    fn is_her_working(&self, instance: &Instance) -> bool {
        let unknown = self.key.unknown();
        let hers = unknown.and_then(|unknown| self.state.standing.get(&unknown));
        let hers = hers.filter(|own| !own.right && OF_A_FORCE.contains(&instance.mistake.id));
        let Some((unknown, hers)) = unknown.zip(hers) else {
            return false;
        };
        let none = &BTreeMap::new();
        let gives = instance
            .key
            .function(&self.key, unknown, &self.sampling, none);
        gives.is_some_and(|gives| (gives[0] - hers.value).abs() <= SAME * gives[0].abs())
    }

    /// The mistake of hers in a force itself that gives a number alone with the unknown as she has
    /// it: of a small difference that tells more than what the mistake gives in full.
    fn working_of_number(&self, judgement: &Judgement) -> Option<&Instance> {
        let evidence = &judgement.evidence;
        let number = evidence.number.filter(|_| evidence.alone)?;
        let (step, unknown) = (judgement.target, self.key.unknown()?);
        step.along()?;
        let hers = self.state.standing.get(&unknown)?;
        let typed = hers.typed.map_or(hers.value, |(typed, _)| typed);
        let pins = BTreeMap::from([(
            unknown,
            hers.function.map(|one| one * typed / hers.function[0]),
        )]);
        let gives_it = |instance: &&Instance| {
            let key = &instance.key;
            let given = key.function(&self.key, step, &self.sampling, &pins);
            let size = |value: f64| value.abs().copysign(number.value);
            self.is_her_working(instance) && given.is_some_and(|given| number.is(size(given[0])))
        };
        self.instances.iter().find(gives_it)
    }
}

/// A refused line as one that follows, with the value that it gives its step.
pub(super) fn following(refused: &Judgement, own: Option<Own>) -> Judgement {
    let mut follows = refused.clone();
    follows.truth = Truth::Follows(Vec::new());
    follows.values = own.into_iter().map(|own| (refused.target, own)).collect();
    follows.establishes = follows.values.iter().map(|(step, _)| *step).collect();
    follows.value = None;
    follows.caret = None;
    follows.remarks.clear();
    follows
}
