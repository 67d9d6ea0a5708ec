//! Storey.
