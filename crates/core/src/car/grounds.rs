//! The grounds of the car: the battery's minus, the strap, what controller and sensors are grounded with.

pub mod fields;
