//! Whether a quotient that tells a pull, or a sum that tells a part of the hinge's force, is literally
//! that of a thought. Ratios and lengths cancel in a quotient, and then it agrees as a function with
//! what nobody thought: so each typed term must meet one of the thought, factor by factor.

use crate::judge::{Board, Judgement, Ratio, TypedRatio, WrittenFactor, WrittenTerm};
use crate::key::{Atom, Formula, Key, Part, Pins, StepId};
use std::collections::BTreeMap;

/// Two numbers are one though they were rounded.
const SAME: f64 = 0.006;
/// Two ratios are one though they were worked out to three figures.
const SAME_RATIO: f64 = 0.0011;
/// The largest number that is no length or force of its own, but belongs to another: the 2 of L/2.
const LARGEST_PLAIN: f64 = 4.0;
/// Terms and factors beyond so many are not compared.
const MOST: usize = 8;

/// How literally a line is the form of a thought.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Fit {
    /// It has not the terms of the thought.
    Not,
    /// It has them, with a ratio of every term before the whole sum.
    Factored,
    /// It has them as they stand.
    Exact,
}

/// How literally the form of a line is that of a working, where it tells a pull or a part of the
/// hinge's force; of other lines the terms are compared elsewhere.
pub(super) fn fit(board: &Board<'_>, judgement: &Judgement, key: &Key) -> Fit {
    let evidence = &judgement.evidence;
    let target = judgement.target;
    let solved = target.is_pull() || matches!(target, StepId::Reaction(_, Part::Along(_)));
    if board.key.general.is_some() || !solved || evidence.equation || evidence.alone {
        return Fit::Exact;
    }
    let Some(meant) = Meant::of(board, key, target) else {
        return Fit::Not;
    };
    let typed = &evidence.written;
    if typed.len().max(meant.terms.len()) > MOST {
        return Fit::Not;
    }
    if meant.has(typed, Placing::AsMeant) {
        Fit::Exact
    } else if meant.has(typed, Placing::Factored) {
        Fit::Factored
    } else {
        Fit::Not
    }
}

/// True for a form that is none of a thought, wherever its ratios stand and whatever was worked out in
/// it before: that the numbers agree is chance then.
pub(super) fn is_refuted(board: &Board<'_>, judgement: &Judgement, key: &Key) -> bool {
    let evidence = &judgement.evidence;
    let typed = &evidence.written;
    // An angle is put together from others in many ways.
    let angle = judgement.target.is_angle() || judgement.target.is_direction();
    let form = !angle && !evidence.alone && !evidence.equation && !evidence.broken_link;
    // Numbers agree by chance; a form with names in it is seen as a function.
    let numbers = evidence.rests_on.is_empty() && !typed.is_empty() && typed.len() <= MOST;
    if board.key.general.is_some() || !form || !numbers {
        return false;
    }
    let meant = Meant::of(board, key, judgement.target);
    meant.is_some_and(|meant| meant.terms.len() <= MOST && !meant.has(typed, Placing::Any))
}

/// True for a line with a ratio before a whole sum: it may belong to each of its terms, or to the pull.
pub(super) fn has_ratio_before_a_sum(judgement: &Judgement) -> bool {
    let mut factors = judgement
        .evidence
        .written
        .iter()
        .flat_map(|term| &term.factors);
    factors.any(|one| one.outside && !one.below && is_ratio(one))
}

/// A ratio, or a number that may be one.
fn is_ratio(one: &WrittenFactor) -> bool {
    one.ratio.is_some() || one.value < 1.0
}

/// What a working would write.
struct Meant {
    terms: Vec<WrittenTerm>,
    /// The ratios that are right there.
    right: Vec<WrittenFactor>,
    /// What the problem prints, which was not worked out.
    printed: Vec<f64>,
}

impl Meant {
    /// True if the typed terms are those of the working, all of them turned or none.
    fn has(&self, typed: &[WrittenTerm], placing: Placing) -> bool {
        let apart = typed.len() > 1 && self.terms.len() > 1;
        let mut hows = [false, true].into_iter().map(|turned| How {
            meant: self,
            placing: if apart { placing } else { Placing::Any },
            turned,
        });
        hows.any(|how| how.fits(typed, (1 << self.terms.len()) - 1))
    }

    fn of(board: &Board<'_>, key: &Key, target: StepId) -> Option<Meant> {
        let mut pins: Pins = board
            .own_pins()
            .iter()
            .filter(|(id, _)| !id.is_balance() && **id != target)
            .map(|(id, function)| (*id, function[0]))
            .collect();
        if let Some(unknown) = board.unknown().filter(|id| *id != target) {
            pins.entry(unknown).or_insert(board.right(unknown)?[0]);
        }
        let pins = &pins;
        let terms = |key: &Key| Writer { board, key, pins }.terms(&key.formula(target)?);
        let right = terms(board.key).unwrap_or_default();
        let ratios = right.into_iter().flat_map(|term| term.factors);
        Some(Meant {
            terms: terms(key)?,
            right: ratios.filter(|one| one.ratio.is_some()).collect(),
            printed: board
                .problem
                .givens()
                .iter()
                .map(|given| given.value)
                .collect(),
        })
    }
}

/// Writes the formulas of a key out in terms.
struct Writer<'b> {
    board: &'b Board<'b>,
    key: &'b Key,
    pins: &'b BTreeMap<StepId, f64>,
}

impl Writer<'_> {
    fn terms(&self, formula: &Formula) -> Option<Vec<WrittenTerm>> {
        Some(match formula {
            Formula::Tagged(_, tagged) => self.terms(tagged)?,
            Formula::Negative(of) => turned(self.terms(of)?),
            Formula::Sum(parts) => {
                let parts = parts.iter().map(|part| self.terms(part));
                parts.collect::<Option<Vec<_>>>()?.concat()
            }
            Formula::Product(parts) => {
                let mut parts = parts.iter().map(|part| self.terms(part));
                let first = parts.next()??;
                parts.try_fold(first, |product, part| Some(times(&product, &part?)))?
            }
            Formula::Quotient(over, under) => {
                let below = match self.terms(under)?.as_slice() {
                    [one] => inverse(one),
                    _ => inverse(&self.number(under)?),
                };
                times(&self.terms(over)?, &[below])
            }
            // A weight and a distance are one thing each, whatever they are made of.
            Formula::Atom(Atom::Step(id))
                if !matches!(id, StepId::Weight(_) | StepId::Distance(_))
                    && !self.pins.contains_key(id) =>
            {
                self.terms(&self.key.formula(*id)?)?
            }
            other => vec![self.number(other)?],
        })
    }

    fn number(&self, formula: &Formula) -> Option<WrittenTerm> {
        let (sampling, pins) = (self.board.sampling.own(), self.pins);
        let value = self.key.evaluate(formula, sampling, pins)?;
        let ratio = match formula {
            Formula::Sine(angle) => Some((Ratio::Sine, angle)),
            Formula::Cosine(angle) => Some((Ratio::Cosine, angle)),
            Formula::Tangent(angle) => Some((Ratio::Tangent, angle)),
            _ => None,
        };
        let ratio = ratio.and_then(|(ratio, angle)| {
            Some(TypedRatio {
                ratio,
                angle: self.key.evaluate(angle, sampling, pins)?,
                numbers: Vec::new(),
            })
        });
        Some(WrittenTerm {
            negative: value < 0.0,
            factors: vec![WrittenFactor {
                value: value.abs(),
                ratio,
                below: false,
                outside: false,
            }],
        })
    }
}

fn turned(mut terms: Vec<WrittenTerm>) -> Vec<WrittenTerm> {
    for term in &mut terms {
        term.negative = !term.negative;
    }
    terms
}

fn inverse(term: &WrittenTerm) -> WrittenTerm {
    let mut term = term.clone();
    for factor in &mut term.factors {
        factor.below = !factor.below;
    }
    term
}

fn times(one: &[WrittenTerm], other: &[WrittenTerm]) -> Vec<WrittenTerm> {
    let beside = |term: &WrittenTerm, sum: bool| {
        let mut factors = term.factors.clone();
        factors.iter_mut().for_each(|factor| factor.outside |= sum);
        factors
    };
    let both = |left: &WrittenTerm, right: &WrittenTerm| {
        let mut factors = beside(left, other.len() > 1);
        factors.extend(beside(right, one.len() > 1));
        WrittenTerm {
            negative: left.negative != right.negative,
            factors,
        }
    };
    let all = one
        .iter()
        .flat_map(|left| other.iter().map(move |right| both(left, right)));
    all.collect()
}

/// Where the ratios of a sum stand.
#[derive(Clone, Copy)]
enum Placing {
    /// There is no sum to tell.
    Any,
    /// As in the thought; what divides the whole may divide each term.
    AsMeant,
    /// Those of each term may also stand before the sum.
    Factored,
}

impl Placing {
    fn allows(self, meant: &WrittenFactor, typed: &WrittenFactor) -> bool {
        match self {
            Placing::Any => true,
            _ if meant.below => meant.outside || !typed.outside,
            Placing::AsMeant => meant.outside == typed.outside,
            Placing::Factored => typed.outside || !meant.outside,
        }
    }
}

/// How terms are compared.
struct How<'m> {
    meant: &'m Meant,
    placing: Placing,
    /// Every term counts the other way.
    turned: bool,
}

impl How<'_> {
    /// True if the typed terms are those that are left of the meant ones, each one of them, or a number
    /// that several of them come to.
    fn fits(&self, typed: &[WrittenTerm], left: usize) -> bool {
        let Some((first, others)) = typed.split_first() else {
            return left == 0;
        };
        let groups = (1..=left).filter(|group| group & left == *group);
        let mut groups = groups.filter(|group| self.is_group(first, *group));
        groups.any(|group| self.fits(others, left & !group))
    }

    fn is_group(&self, typed: &WrittenTerm, group: usize) -> bool {
        let all = self.meant.terms.iter().enumerate();
        let of: Vec<&WrittenTerm> = all
            .filter(|(at, _)| group & (1 << at) != 0)
            .map(|(_, term)| term)
            .collect();
        match of.as_slice() {
            [one] => {
                one.negative == (typed.negative != self.turned)
                    && self.meets(&refs(&one.factors), &refs(&typed.factors))
            }
            _ => self.is_sum(typed, &of),
        }
    }

    /// True for a sum that was worked out before, with what divides it, or stands beside it, typed.
    fn is_sum(&self, typed: &WrittenTerm, of: &[&WrittenTerm]) -> bool {
        let stays = |one: &&WrittenFactor| one.below || one.outside;
        let Some((first, others)) = of.split_first() else {
            return false;
        };
        let beside: Vec<&WrittenFactor> = first.factors.iter().filter(stays).collect();
        let common = others.iter().all(|term| {
            let theirs: Vec<&WrittenFactor> = term.factors.iter().filter(stays).collect();
            theirs == beside
        });
        let inner = |term: &&WrittenTerm| {
            let inner = term.factors.iter().filter(|one| !stays(one));
            let value: f64 = inner.map(|one| one.value).product();
            if term.negative { -value } else { value }
        };
        let sum: f64 = of.iter().map(inner).sum();
        let negative = (sum < 0.0) != self.turned;
        // A sum of weights may be written as one of masses; one of moments is a number.
        let mut inner = of
            .iter()
            .map(|term| term.factors.iter().filter(|one| !stays(one)));
        let of_forces = inner.all(|factors| factors.count() == 1);
        let typed_refs = refs(&typed.factors);
        let mut groups = (1..1_usize << typed_refs.len().min(MOST)).filter(|group| {
            let numbers = chosen(&typed_refs, *group);
            let value = numbers.iter().map(|one| one.value).product();
            let above = numbers.iter().all(|one| !one.below && one.ratio.is_none());
            above && (of_forces || numbers.len() == 1) && self.was_worked_out(value, sum.abs())
        });
        common
            && negative == typed.negative
            && groups.any(|group| self.meets(&beside, &without(&typed_refs, group)))
    }

    /// True if a typed number is this value, and nothing that the problem prints.
    fn was_worked_out(&self, typed: f64, value: f64) -> bool {
        let mut printed = self.meant.printed.iter();
        same(typed, value) && !printed.any(|printed| (printed - typed).abs() < 1e-9)
    }

    /// True if the typed factors are the meant ones, and no other.
    fn meets(&self, meant: &[&WrittenFactor], typed: &[&WrittenFactor]) -> bool {
        if typed.len() > MOST || meant.len() > MOST {
            return false;
        }
        let Some((first, others)) = meant.split_first() else {
            return typed.iter().all(|one| (one.value - 1.0).abs() < 1e-9);
        };
        if first.ratio.is_none() && (first.value - 1.0).abs() < 1e-9 {
            return self.meets(others, typed);
        }
        let groups = 1..1_usize << typed.len();
        let one = |group: usize| self.is_made_of(first, typed, group);
        let mut ones = groups.filter(|group| one(*group));
        ones.any(|group| self.meets(others, &without(typed, group)))
            || self.is_hidden(first, others, typed)
    }

    /// True if these typed factors are the meant one: a ratio as it is, a number from its parts.
    fn is_made_of(&self, meant: &WrittenFactor, typed: &[&WrittenFactor], group: usize) -> bool {
        let of = chosen(typed, group);
        if let ([one], Some(ratio)) = (of.as_slice(), &meant.ratio) {
            return one.below == meant.below
                && self.placing.allows(meant, one)
                && self.is_ratio(one, ratio, meant);
        }
        let plain = |one: &WrittenFactor| one.value <= LARGEST_PLAIN && one.value.fract() == 0.0;
        let whole = of.iter().fold(1.0, |whole, one| {
            if one.below == meant.below {
                whole * one.value
            } else {
                whole / one.value
            }
        });
        meant.ratio.is_none()
            && of.iter().any(|one| one.below == meant.below)
            && of
                .iter()
                .all(|one| one.ratio.is_none() && (one.below == meant.below || plain(one)))
            && same(whole, meant.value)
    }

    /// True if a typed factor is this ratio. One that is right may be written with the other side of
    /// the triangle, or as the number that it is.
    fn is_ratio(&self, typed: &WrittenFactor, ratio: &TypedRatio, meant: &WrittenFactor) -> bool {
        let right = |right: &WrittenFactor| {
            right.below == meant.below && (right.value - meant.value).abs() < 1e-9
        };
        let near = (typed.value - meant.value).abs() < SAME_RATIO;
        match &typed.ratio {
            Some(one) => {
                let angle = (one.angle.abs() - ratio.angle.abs()).abs() < SAME_RATIO;
                one.ratio == ratio.ratio && angle || near && self.meant.right.iter().any(right)
            }
            None => near,
        }
    }

    /// True if a typed number was worked out from this factor and others: a component, a moment.
    fn is_hidden(
        &self,
        first: &WrittenFactor,
        others: &[&WrittenFactor],
        typed: &[&WrittenFactor],
    ) -> bool {
        let groups = 1..1_usize << others.len();
        let mut found = groups.filter_map(|group| {
            let with = chosen(others, group);
            let one_side = with.iter().all(|one| one.below == first.below);
            // A part by dividing: what divides it divides no whole sum.
            let apart = with.iter().chain([&first]).all(|one| !one.outside);
            let value = with.iter().fold(first.value, |value, one| {
                if one.below == first.below {
                    value * one.value
                } else {
                    value / one.value
                }
            });
            let at = typed.iter().position(|one| {
                one.below == first.below
                    && one.ratio.is_none()
                    && self.was_worked_out(one.value, value)
            })?;
            (one_side || apart).then(|| (without(others, group), without(typed, 1 << at)))
        });
        found.any(|(others, typed)| self.meets(&others, &typed))
    }
}

fn refs(factors: &[WrittenFactor]) -> Vec<&WrittenFactor> {
    factors.iter().collect()
}

fn chosen<'f>(all: &[&'f WrittenFactor], group: usize) -> Vec<&'f WrittenFactor> {
    let places = all.iter().enumerate();
    let of = places.filter(|(at, _)| group & (1 << at) != 0);
    of.map(|(_, one)| *one).collect()
}

fn without<'f>(all: &[&'f WrittenFactor], group: usize) -> Vec<&'f WrittenFactor> {
    chosen(all, !group)
}

fn same(one: f64, other: f64) -> bool {
    (one - other).abs() <= SAME * other.abs()
}
