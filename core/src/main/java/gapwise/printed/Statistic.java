package gapwise.printed;

/** What a word beside a number says that the number is. */
public enum Statistic {
  MEAN,
  MEDIAN,
  SD,
  SE,
  RANGE,
  QUARTILES,
  CONFIDENCE,
  MINIMUM,
  MAXIMUM,
  FIRST_QUARTILE,
  THIRD_QUARTILE,
  COUNT,
  TOTAL,
  PERCENT,
  P_VALUE
}
