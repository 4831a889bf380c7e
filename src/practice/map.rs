//! The map of lessons: how deep each stands, and which is the one to go on with.

use super::door::LessonChoice;
use crate::record::Standing;

/// How many lessons at most stand before each, one building on the other. Lessons that build on
/// each other in a circle stand as deep as there are lessons, no deeper.
pub fn depths(lessons: &[LessonChoice]) -> Vec<usize> {
    let mut depths = vec![0; lessons.len()];
    for _ in 0..lessons.len() {
        for (place, lesson) in lessons.iter().enumerate() {
            let bases = lesson.builds_on.iter().filter(|base| **base != place);
            let deepest = bases.filter_map(|base| depths.get(*base)).max();
            depths[place] = deepest.map_or(0, |depth| depth + 1).min(lessons.len());
        }
    }
    depths
}

/// The lesson to go on with, by its place: one that is due, else the latest that is begun, else
/// the first new one of which everything before it is mastered, else the first new one.
pub fn next_lesson(lessons: &[LessonChoice]) -> Option<usize> {
    let is = |standing: Standing| move |lesson: &LessonChoice| lesson.standing == standing;
    let known = |base: &usize| {
        let base = lessons.get(*base);
        base.is_none_or(|base| matches!(base.standing, Standing::Mastered | Standing::Due))
    };
    let open = |lesson: &LessonChoice| {
        lesson.standing == Standing::New && lesson.builds_on.iter().all(known)
    };
    let first = (!lessons.is_empty()).then_some(0);
    lessons
        .iter()
        .position(is(Standing::Due))
        .or_else(|| lessons.iter().rposition(is(Standing::Begun)))
        .or_else(|| lessons.iter().position(open))
        .or_else(|| lessons.iter().position(is(Standing::New)))
        .or(first)
}

#[cfg(test)]
mod tests {
    use super::*;
    use Standing::{Begun, Due, Mastered, New};

    fn lesson(builds_on: &[usize], standing: Standing) -> LessonChoice {
        LessonChoice {
            builds_on: builds_on.to_vec(),
            standing,
            ..LessonChoice::default()
        }
    }

    #[test]
    fn a_lesson_stands_below_the_deepest_that_it_builds_on() {
        let bases: [(&[&[usize]], &[usize]); 5] = [
            (&[], &[]),
            (&[&[], &[0], &[0, 1]], &[0, 1, 2]),
            (&[&[], &[], &[0], &[1, 2]], &[0, 0, 1, 2]),
            // What is not there, and the lesson itself, count for nothing.
            (&[&[7], &[1, 0]], &[0, 1]),
            (&[&[1], &[0]], &[2, 2]),
        ];
        for (bases, expected) in bases {
            let lessons: Vec<LessonChoice> = bases.iter().map(|base| lesson(base, New)).collect();
            assert_eq!(depths(&lessons), expected, "{bases:?}");
        }
    }

    #[test]
    fn what_is_due_comes_first_then_what_is_begun_then_what_is_open() {
        let next = |standings: [Standing; 3]| {
            let [one, two, three] = standings;
            let lessons = [lesson(&[], one), lesson(&[0], two), lesson(&[0, 1], three)];
            next_lesson(&lessons)
        };
        for (standings, expected) in [
            ([New, New, New], 0),
            ([Begun, New, New], 0),
            ([Mastered, New, New], 1),
            ([Mastered, Begun, Begun], 2),
            ([Due, Begun, New], 0),
            ([Mastered, Due, New], 1),
            ([Begun, Mastered, New], 0),
            ([New, Mastered, New], 0),
            ([Mastered, Mastered, New], 2),
            ([Mastered, Mastered, Mastered], 0),
        ] {
            assert_eq!(next(standings), Some(expected), "{standings:?}");
        }
        assert_eq!(next_lesson(&[]), None);
    }
}
