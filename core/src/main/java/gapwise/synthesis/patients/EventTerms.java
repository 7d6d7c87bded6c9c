package gapwise.synthesis.patients;

import gapwise.numeric.GaussHermite;

/**
 * The log likelihood of a binomial count by its logit eta, and, where the moderator spreads within
 * an arm, by the slope within studies too: each patient's logit is then eta + slope * spread * t
 * with t standard normal, and the chance of the event is the mean over t.
 */
final class EventTerms {
  private static final int SPREAD_POINTS = 25;

  private final GaussHermite rule = GaussHermite.of(SPREAD_POINTS);

  double value;

  /** First derivatives by eta and by the slope. */
  double byEta;

  double bySlope;

  /** Second derivatives. */
  double etaEta;

  double etaSlope;
  double slopeSlope;

  /** All patients at one value of the moderator. */
  void at(double events, double total, double eta) {
    double e = Math.exp(-Math.abs(eta));
    double p = eta >= 0 ? 1 / (1 + e) : e / (1 + e);
    value = events * eta - total * (Math.max(eta, 0) + Math.log1p(e));
    byEta = events - total * p;
    etaEta = -total * (e / ((1 + e) * (1 + e)));
    bySlope = 0;
    etaSlope = 0;
    slopeSlope = 0;
  }

  /** The moderator has a standard deviation in the arm. */
  void at(double events, double total, double eta, double slope, double spread) {
    double yes = 0;
    double no = 0;
    double pe = 0;
    double pb = 0;
    double pee = 0;
    double peb = 0;
    double pbb = 0;
    for (int k = 0; k < rule.points(); k++) {
      double t = spread * rule.node(k);
      double own = eta + slope * t;
      double e = Math.exp(-Math.abs(own));
      double larger = 1 / (1 + e);
      double smaller = e / (1 + e);
      double p = own >= 0 ? larger : smaller;
      double weight = rule.weight(k);
      double bend = weight * larger * smaller;
      double turn = bend * (1 - 2 * p);
      yes += weight * p;
      no += weight * (own >= 0 ? smaller : larger);
      pe += bend;
      pb += bend * t;
      pee += turn;
      peb += turn * t;
      pbb += turn * t * t;
    }
    double nonEvents = total - events;
    value =
        (events > 0 ? events * Math.log(yes) : 0) + (nonEvents > 0 ? nonEvents * Math.log(no) : 0);
    double first = (events > 0 ? events / yes : 0) - (nonEvents > 0 ? nonEvents / no : 0);
    double second =
        -(events > 0 ? events / yes / yes : 0) - (nonEvents > 0 ? nonEvents / no / no : 0);
    byEta = first * pe;
    bySlope = first * pb;
    etaEta = first * pee + second * pe * pe;
    etaSlope = first * peb + second * pe * pb;
    slopeSlope = first * pbb + second * pb * pb;
  }
}
