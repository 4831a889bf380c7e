//! What the screen and the line dialogue share: the tutor as they see it, and what they ask of
//! the outside (lessons, and the learner's record). The command line answers for the outside.

mod choices;
mod door;
mod fade;
mod map;
mod shown;

pub use crate::record::Standing;
pub use choices::{Choice, choices, choose, choose_next};
pub use door::{Again, Desk, Earlier, LessonChoice, Opening, People, Resumable, Start, Tutor};
pub use fade::{next_fading, offered, taken};
pub use map::{depths, next_lesson};
pub use shown::{shown, shown_turn};
