//! What to buy.
