//! Not filled yet.
