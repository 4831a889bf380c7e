//! Why a lesson's numbers are refused, counted over many draws.

use super::{Refusal, candidates, refuse};
use crate::key::derive;
use crate::lesson::{GridPlace, Lesson};
use crate::statics::Unsolvable;
use std::mem::discriminant;

/// A rule that refused draws of one structure of a lesson.
#[derive(Clone, Debug, PartialEq)]
pub struct Refused {
    /// The structure, by its place among the lesson's variants.
    pub variant: usize,
    /// How many draws it refused.
    pub count: usize,
    /// What it said of the first of them.
    pub why: String,
    /// The fields of the structure that decide it, the likeliest first, as `ropes.0.direction`.
    pub fields: &'static [&'static str],
}

/// The rules that refuse a lesson's first draws, `tries` of them, the one that refuses most first.
pub fn refusals(lesson: &Lesson, tries: usize, language: &str) -> Vec<Refused> {
    let mut found: Vec<(Option<Refusal>, Refused)> = Vec::new();
    for place in candidates(lesson, 1).take(tries) {
        let Some((refusal, why)) = refused(lesson, &place, language) else {
            continue;
        };
        let known = found.iter_mut().find(|(other, known)| {
            known.variant == place.variant && is_one_rule(other.as_ref(), refusal.as_ref())
        });
        match known {
            Some((_, known)) => known.count += 1,
            None => {
                let fields = fields(refusal.as_ref());
                let (variant, count) = (place.variant, 1);
                let told = Refused {
                    variant,
                    count,
                    why,
                    fields,
                };
                found.push((refusal, told));
            }
        }
    }
    let mut told: Vec<Refused> = found.into_iter().map(|(_, told)| told).collect();
    told.sort_by_key(|refused| std::cmp::Reverse(refused.count));
    told
}

/// The rule that refuses a draw and what it says; no rule where there is no walk at all.
fn refused(
    lesson: &Lesson,
    place: &GridPlace,
    language: &str,
) -> Option<(Option<Refusal>, String)> {
    let problem = lesson.problem_at(place, language).ok()?;
    match derive(&problem) {
        Ok(key) => refuse(&problem, &key).map(|refusal| {
            let why = refusal.to_string();
            (Some(refusal), why)
        }),
        Err(trouble) => Some((None, trouble.to_string())),
    }
}

fn is_one_rule(one: Option<&Refusal>, other: Option<&Refusal>) -> bool {
    match (one, other) {
        (Some(Refusal::Unsolvable { cause: one }), Some(Refusal::Unsolvable { cause: other })) => {
            discriminant(one) == discriminant(other)
        }
        (Some(one), Some(other)) => discriminant(one) == discriminant(other),
        (None, None) => true,
        _ => false,
    }
}

fn fields(refusal: Option<&Refusal>) -> &'static [&'static str] {
    match refusal {
        Some(
            Refusal::Unsolvable {
                cause: Unsolvable::RopeWouldPush { .. },
            }
            | Refusal::AbsurdForce { .. }
            | Refusal::TinyPull { .. },
        ) => &["ropes.0.direction"],
        Some(Refusal::Unsolvable {
            cause: Unsolvable::ContactWouldPull { .. },
        }) => &["supports"],
        Some(
            Refusal::SpecialAngle { .. }
            | Refusal::AnglesTooClose { .. }
            | Refusal::SumNearRightAngle { .. },
        ) => &["body.tilt.angle", "ropes.0.direction"],
        Some(
            Refusal::EqualDistances { .. }
            | Refusal::UnitDistance { .. }
            | Refusal::MomentsNearlyCancel { .. }
            | Refusal::SmallDifference { .. },
        ) => &["loads"],
        _ => &[],
    }
}
