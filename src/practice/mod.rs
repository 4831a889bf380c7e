//! What the screen and the line dialogue share: the tutor as they see it, and what they ask of
//! the outside (lessons, and the learner's record). The command line answers for the outside.

mod door;

pub use door::{Desk, LessonChoice, Opening, Resumable, Start, Tutor};
