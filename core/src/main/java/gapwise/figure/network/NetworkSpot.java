package gapwise.figure.network;

/**
 * A treatment's place on the oval.
 *
 * @param cosine of its angle, 1 at the right end
 * @param sine of its angle, 1 at the lower end
 */
record NetworkSpot(double x, double y, double radius, double cosine, double sine) {}
