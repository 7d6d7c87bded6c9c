package gapwise.exchange;

import gapwise.evidence.TestOfMeans;
import gapwise.exchange.form.LimitedForm;
import gapwise.exchange.form.NumberForm;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The columns of a t test of a mean against that of another arm. */
final class TestFields {
  private final Field<String> against =
      Field.id(
              "test_arm",
              "Test: other arm",
              "Arm whose mean of the same outcome the test sets against this one. Where neither"
                  + " prints a spread, both get a standard deviation from the test.")
          .like("B");
  private final Field<Double> t =
      Field.number(
              "test_t", "Test: t statistic", "Of an unpaired t test of the two means, as printed.")
          .like("2.4");
  private final Field<Double> p =
      Field.of(
              "test_p",
              "Test: exact p value",
              "Two-sided, of an unpaired t test of the two means, printed with an equals sign. A"
                  + " bound such as p < 0.05 goes into test_words alone.",
              LimitedForm.between(NumberForm.plain(), 0, 1, "a p value from 0 to 1 was expected"))
          .like("0.02");

  List<Field<?>> fields() {
    return List.of(against, t, p);
  }

  /** The column of the other arm. */
  Field<String> against() {
    return against;
  }

  Optional<TestOfMeans> read(RowReader row) {
    Optional<String> other = row.get(against);
    OptionalDouble statistic = row.number(t);
    OptionalDouble probability = row.number(p);
    boolean numbers = statistic.isPresent() || probability.isPresent();
    if (other.isEmpty() && !numbers) {
      return Optional.empty();
    }
    if (other.isEmpty() || !numbers) {
      row.refuse(
          other.isEmpty() ? against : p,
          "incomplete-test",
          "A test of two means needs the other arm and its t statistic or exact p value. Where the"
              + " paper does not give both, write its words into test_words alone.");
      return Optional.empty();
    }
    if (probability.isPresent()
        && (probability.getAsDouble() == 0 || probability.getAsDouble() == 1)) {
      row.refuse(
          p,
          "not-an-exact-p",
          "A p value of 0 or 1 is a rounded bound, from which no spread follows. Write it into"
              + " test_words alone.");
      return Optional.empty();
    }
    return row.built(
        () -> new TestOfMeans(other.get(), statistic, probability),
        fields().toArray(Field<?>[]::new));
  }

  void write(RowWriter row, TestOfMeans test) {
    row.put(against, test.against());
    row.put(t, test.t());
    row.put(p, test.pValue());
  }
}
