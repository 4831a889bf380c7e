//! A line in which values of her own stand as numbers, looked at with their names in their places: after
//! `B = 147 N`, which is wrong, the line `MA + 147·7 = …` is `MA + B·7 = …`, and follows where that holds.

use super::Session;
use super::freely_wide::is_unseen;
use super::own_relations::following;
use crate::judge::{Board, ByPart, Judgement, NameRole, Own, Remark, Truth, by_part, own_of_wrong};
use crate::key::{Atom, Formula, Part, Rule, StepId};
use crate::problem::{Given, GivenId};
use crate::reading::{Tree, read};
use crate::text::Span;
use crate::units::Dimension;
use std::cell::RefCell;

/// Masses nearer than this are one number, in kilograms.
const ONE_NUMBER: f64 = 1e-9;

/// The most of her numbers that are tried one by one.
const MOST: usize = 4;

/// A value of hers that stands in a line as a number, and where.
type Typed = (StepId, Own, Vec<Span>);

impl Session {
    /// A line that is not seen to hold and does with names in the place of her own values: it follows
    /// from those that are wrong.
    pub(super) fn by_own_named(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        // Of a chain the number behind it would be no better for a name before it.
        let chain = found.evidence.broken_link && line.matches('=').count() > 1;
        let refused = found.truth == Truth::DoesNotHold && !chain;
        if !self.is_free() || !refused && !is_unseen(found) || found.evidence.alone {
            return None;
        }
        let typed = self.typed_of_hers(line);
        if typed.is_empty() {
            return None;
        }
        // What was spent on the numbers is spent.
        self.before.effort().renew();
        let wrong: Vec<Typed> = typed
            .iter()
            .filter(|(_, own, _)| !own.right)
            .cloned()
            .collect();
        // A number may be hers at one place and a given at another.
        let places = typed.iter().flat_map(|(step, own, spans)| {
            let single = |span: &Span| vec![(*step, own.clone(), vec![*span])];
            spans.iter().map(single)
        });
        let mut ways = vec![each_once(&typed, true), each_once(&typed, false)];
        ways.push(each_once(&wrong, true));
        ways.extend(places.take(MOST));
        ways.dedup();
        ways.retain(|way| !way.is_empty());
        ways.into_iter()
            .find_map(|way| self.with_names(asked, line, found, &way))
    }

    /// The values of hers that stand in a line as numbers.
    fn typed_of_hers(&self, line: &str) -> Vec<Typed> {
        let (names, own_values) = (self.names(), self.own_values());
        let told = self.board(&names, &own_values).values_typed(line);
        let standing = &self.state.standing;
        // `W1 = -107.8 N` has its sign in the name: the number itself has that which stands before it.
        let signed = |step: StepId, own: &Own| own.against && step.is_size();
        told.into_iter()
            .filter_map(|(step, spans)| {
                let own = standing.get(&step).filter(|own| !signed(step, own))?;
                Some((step, own.clone(), spans))
            })
            .collect()
    }

    /// What a refused equation says of a part of the hinge's force that is told and stands in it as a
    /// number.
    pub(super) fn by_typed_part(
        &self,
        board: &Board<'_>,
        (line, number): (&str, usize),
        found: &Judgement,
    ) -> Option<ByPart> {
        if found.truth != Truth::DoesNotHold || !found.target.is_balance() {
            return None;
        }
        let mut typed = self.typed_of_hers(line);
        typed.retain(|(step, own, _)| {
            own.right && matches!(step, StepId::Reaction(_, Part::Along(_)))
        });
        let [(part, ..)] = typed.as_slice() else {
            return None;
        };
        let way = self.put_names(line, &typed)?;
        by_part(board, (&way, number), found, Some(*part))
    }

    /// The line with these values named, if it holds so.
    fn with_names(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
        typed: &[Typed],
    ) -> Option<Judgement> {
        let way = self.put_names(line, typed)?;
        let judge = |session: &Session| session.judged_anywhere(asked, &way);
        let mut there = self.beside_right_alone(judge);
        // The sum of all weights is worked out in the head.
        if is_unseen(&there) {
            self.state.wide = true;
            there = self.beside_right_alone(judge);
            self.state.wide = false;
        }
        let empty = |remark: &Remark| matches!(remark, Remark::SaysNothing | Remark::OfNumbers);
        let holds = there.stands() && there.names.is_none() && !there.remarks.iter().any(empty);
        let turned = typed.iter().any(|one| self.is_turned_in(&there, one));
        if !holds || turned {
            return None;
        }
        let mut lines: Vec<usize> = typed
            .iter()
            .filter(|(_, own, _)| !own.right)
            .map(|(_, own, _)| own.line)
            .collect();
        lines.sort_unstable();
        lines.dedup();
        if lines.is_empty() {
            return Some(Judgement {
                layout: found.layout.clone(),
                ..there
            });
        }
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        let own = own_of_wrong(&board, found, self.state.next_number, None);
        let told = found.target.is_balance() || self.names_target(found);
        // What a sum comes to is no value of what is named in it.
        let told = told && !found.evidence.broken_link;
        Some(Judgement {
            truth: Truth::Follows(lines),
            ..following(found, own.filter(|_| told))
        })
    }

    /// A line with names in the place of numbers; the last comes first, so that places stay.
    fn put_names(&self, line: &str, typed: &[Typed]) -> Option<String> {
        let mut places: Vec<(Span, String)> = Vec::new();
        for (step, _, spans) in typed {
            let symbol = self.key.step(*step)?.symbol.typed();
            places.extend(spans.iter().map(|span| (*span, symbol.clone())));
        }
        replaced(line, places)
    }

    /// A line with other words in the place of the quantities named in it; `None` where none of them
    /// has one.
    pub(super) fn with_names_replaced(
        &self,
        line: &str,
        word_for: &dyn Fn(StepId) -> Option<String>,
    ) -> Option<String> {
        let names = self.names();
        let readings = read(line, names.vocabulary()).ok()?;
        let named = readings.first()?.sides.iter().flat_map(Tree::names);
        let word = |(id, span): (_, Span)| {
            let NameRole::Step(step) = names.role(id)? else {
                return None;
            };
            Some((span, word_for(step)?))
        };
        let places: Vec<(Span, String)> = named.filter_map(word).collect();
        (!places.is_empty()).then(|| replaced(line, places))?
    }

    /// `Wb·9.8·1.5 + W1·2.3 = …` after `Wb = 28 N`, the number of a mass: times g it is the weight.
    pub(super) fn with_masses_meant(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let refused = found.truth == Truth::DoesNotHold && !self.is_general();
        if !refused || found.evidence.alone {
            return None;
        }
        let lines = RefCell::new(Vec::new());
        let mass = |step: StepId| {
            let own = self.state.standing.get(&step).filter(|own| !own.right)?;
            let mass = self.mass_of(step)?;
            if own
                .typed
                .is_none_or(|(typed, _)| (typed - mass.value).abs() > ONE_NUMBER)
            {
                return None;
            }
            lines.borrow_mut().push(own.line);
            Some(mass.symbol.typed())
        };
        let way = self.with_names_replaced(line, &mass)?;
        let judged = self.judged_in_force(asked, &way);
        let mut lines = lines.into_inner();
        match judged.truth.clone() {
            Truth::Holds | Truth::HoldsRounded => {}
            Truth::Follows(others) => lines.extend(others),
            _ => return None,
        }
        lines.sort_unstable();
        lines.dedup();
        Some(Judgement {
            truth: Truth::Follows(lines),
            layout: found.layout.clone(),
            ..judged
        })
    }

    /// The mass that a weight is worked out with.
    fn mass_of(&self, step: StepId) -> Option<&Given> {
        let StepId::Weight(_) = step else {
            return None;
        };
        let Rule::Formula(formula) = &self.key.step(step)?.rule else {
            return None;
        };
        let given = given_in(formula).map(|id| self.problem.given(id));
        given.filter(|given| given.dimension == Dimension::MASS)
    }

    /// True where the line counts a quantity in another sense than her number has, which is that of the
    /// right value or told by a line of hers.
    fn is_turned_in(&self, there: &Judgement, (step, own, _): &Typed) -> bool {
        let (names, own_values) = (self.names(), self.own_values());
        let right = self.board(&names, &own_values).right(*step);
        let sure = right.is_some_and(|right| right[0] * own.function[0] > 0.0);
        if !step.has_free_sense() || !sure && !self.state.senses.contains_key(step) {
            return false;
        }
        let counted = there.remarks.iter().find_map(|remark| match remark {
            Remark::SensesTaken(senses) => senses.iter().find(|(of, _)| of == step),
            _ => None,
        });
        counted.is_some_and(|(_, against)| *against == (own.function[0] > 0.0))
    }
}

/// The values with every place of the line once: of two with one number there stands the later, or
/// the earlier.
fn each_once(typed: &[Typed], later: bool) -> Vec<Typed> {
    let taken = |(step, own, _): &Typed, span: &Span| {
        typed.iter().any(|(other, known, spans)| {
            let first = if later {
                known.line > own.line
            } else {
                known.line < own.line
            };
            other != step && first && spans.contains(span)
        })
    };
    let kept = |one: &Typed| -> Typed {
        let spans = one.2.iter().filter(|span| !taken(one, span));
        (one.0, one.1.clone(), spans.copied().collect())
    };
    let all = typed.iter().map(kept);
    all.filter(|(_, _, spans)| !spans.is_empty()).collect()
}

/// A line with words in the place of others; the last comes first, so that places stay. `None` where
/// a place is none of the line's.
fn replaced(line: &str, mut places: Vec<(Span, String)>) -> Option<String> {
    places.sort_by_key(|(span, _)| std::cmp::Reverse(span.start));
    let mut way = line.to_owned();
    for (span, word) in places {
        let behind = line.get(span.end..)?.chars().next();
        // `147 B` and `147cos` are products.
        let sign = behind.is_some_and(char::is_alphanumeric);
        let before = line.get(..span.start)?.chars().next_back();
        let product = before.is_some_and(char::is_alphanumeric);
        let times = |needed: bool| if needed { "*" } else { "" };
        let name = format!("{}{word}{}", times(product), times(sign));
        way.replace_range(span.start..span.end, &name);
    }
    Some(way)
}

/// The first number that the problem tells in a formula.
fn given_in(formula: &Formula) -> Option<GivenId> {
    match formula {
        Formula::Atom(Atom::Given(id)) => Some(*id),
        other => other.children().into_iter().find_map(given_in),
    }
}
