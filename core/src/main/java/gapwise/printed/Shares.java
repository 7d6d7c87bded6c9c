package gapwise.printed;

import gapwise.printed.PrintedValue.Amount;
import gapwise.printed.PrintedValue.Bound;
import gapwise.printed.PrintedValue.Dated;
import gapwise.printed.PrintedValue.Limits;
import gapwise.printed.PrintedValue.Pair;
import gapwise.printed.PrintedValue.Share;
import gapwise.printed.PrintedValue.Summary;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a text gives to a count, its total and its percentage. */
record Shares(String text, Wanted wanted, Setting setting) {
  private static final OptionalDouble NONE = OptionalDouble.empty();

  List<Proposed> of(PrintedValue value) {
    if (value instanceof Share share) {
      return share(share);
    }
    if (value instanceof Amount amount) {
      return amount(amount);
    }
    if (value instanceof Summary summary && summary.limits().isEmpty()) {
      return twoNumbers(summary);
    }
    if (setting.said().says(Statistic.CONFIDENCE) && value instanceof Summary) {
      return List.of(
          Proposed.left(
              wanted.part("percent"),
              "Found the limits '" + text + "' of a share. The template keeps none of it."));
    }
    if (value instanceof Dated dated) {
      return dated(dated.pairs());
    }
    if (value instanceof Summary summary
        && summary.centre().isEmpty()
        && summary.limits().size() == 1) {
      Limits limits = summary.limits().get(0);
      return dated(List.of(new Pair((int) limits.low(), (int) limits.high())));
    }
    return List.of(
        question("Found '" + text + "' where a count is wanted. Write the count, or leave it."));
  }

  private Proposed question(String why) {
    return Proposed.asked(wanted.count(), "", Optional.empty(), Doubt.WORD, why);
  }

  private List<Proposed> share(Share share) {
    List<Proposed> proposals = new ArrayList<>();
    share.count().ifPresent(count -> proposals.add(taken(wanted.count(), count)));
    share.total().ifPresent(total -> proposals.add(taken(wanted.total(), total)));
    share.percent().ifPresent(percent -> proposals.add(taken(wanted.part("percent"), percent)));
    if (share.agrees(setting.groupSize())) {
      return otherTotal(share, proposals);
    }
    String of =
        share.total().isPresent()
            ? ""
            : setting.groupSize().isPresent()
                ? " of " + Proposer.plain(setting.groupSize().getAsDouble()) + " in the group"
                : "";
    return askedAll(
        proposals,
        Doubt.CONTRADICTION,
        "Found '"
            + text
            + "'"
            + of
            + ": count, total and percentage do not go together. Check them against the paper.");
  }

  /** A printed total that is larger than the group is no total of it. */
  private List<Proposed> otherTotal(Share share, List<Proposed> proposals) {
    if (share.total().isPresent()
        && setting.groupSize().isPresent()
        && share.total().getAsDouble() > setting.groupSize().getAsDouble()) {
      return askedAll(
          proposals,
          Doubt.DENOMINATOR,
          "Found '"
              + text
              + "', more than the "
              + Proposer.plain(setting.groupSize().getAsDouble())
              + " of the group. Say of whom this is counted.");
    }
    return proposals;
  }

  private Proposed taken(String column, double value) {
    return Proposed.taken(column, Proposer.plain(value), Optional.empty());
  }

  private static List<Proposed> askedAll(List<Proposed> proposals, Doubt doubt, String why) {
    return proposals.stream().map(one -> one.askedBecause(doubt, why)).toList();
  }

  private List<Proposed> amount(Amount amount) {
    if (amount.bound() != Bound.EXACT || amount.unit().isPresent() || amount.value() < 0) {
      return List.of(
          question("Found '" + text + "' where a count is wanted. Write the count, or leave it."));
    }
    boolean percent = setting.said().says(Statistic.PERCENT);
    boolean count = setting.said().says(Statistic.COUNT);
    if (setting.said().says(Statistic.TOTAL) && !count && !percent) {
      return List.of(taken(wanted.total(), amount.value()));
    }
    if (percent && !count) {
      return share(new Share(NONE, NONE, OptionalDouble.of(amount.value()), 0));
    }
    if (!amount.whole()) {
      return List.of(
          Proposed.asked(
              wanted.part("percent"),
              Proposer.plain(amount.value()),
              Optional.empty(),
              Doubt.PERCENT,
              "Found '"
                  + text
                  + "', which is no whole number, where a count is wanted. Say whether it is a percentage."));
    }
    return counted(amount.value(), percent || count);
  }

  private List<Proposed> counted(double value, boolean said) {
    Proposed count = taken(wanted.count(), value);
    OptionalDouble group = setting.groupSize();
    if (group.isPresent() && value > group.getAsDouble()) {
      return List.of(
          count.askedBecause(
              Doubt.PERCENT,
              "Found "
                  + text
                  + " of "
                  + Proposer.plain(group.getAsDouble())
                  + " in the group. Say whether it is a percentage, or counted of others."));
    }
    if (group.isEmpty() && !said && value > 0) {
      return List.of(
          count.askedBecause(
              Doubt.PERCENT,
              "Found "
                  + text
                  + ", and nothing says whether it is a count or a percentage. Say which."));
    }
    return List.of(count);
  }

  /** "20 (87)": which is the percentage says the header, or the size of the group. */
  private List<Proposed> twoNumbers(Summary summary) {
    if (summary.centre().isEmpty()
        || summary.deviation().isEmpty()
        || summary.deviation().get().plusMinus()) {
      return List.of(
          question("Found '" + text + "' where a count is wanted. Write the count, or leave it."));
    }
    double first = summary.centre().getAsDouble();
    double second = summary.deviation().get().value();
    List<Statistic> order = setting.said().statistics();
    int percent = order.indexOf(Statistic.PERCENT);
    int count = order.indexOf(Statistic.COUNT);
    boolean turned = percent >= 0 && count > percent;
    Share share =
        new Share(
            OptionalDouble.of(turned ? second : first),
            NONE,
            OptionalDouble.of(turned ? first : second),
            0);
    boolean proven = setting.groupSize().isPresent() && share.agrees(setting.groupSize());
    if (percent >= 0 || proven) {
      return share(share);
    }
    return askedAll(
        share(share),
        Doubt.PERCENT,
        "Found '"
            + text
            + "', and nothing says what stands in brackets. Say whether it is a percentage.");
  }

  private List<Proposed> dated(List<Pair> pairs) {
    Optional<Pair> pair =
        pairs.stream()
            .filter(
                one ->
                    setting.groupSize().isPresent()
                        && one.second() == setting.groupSize().getAsDouble()
                        && one.first() <= one.second())
            .findFirst()
            .or(() -> pairs.stream().filter(one -> one.first() <= one.second()).findFirst());
    if (pair.isEmpty()) {
      return List.of(
          Proposed.asked(
              wanted.count(),
              "",
              Optional.empty(),
              Doubt.DATE,
              "Found the date '"
                  + text
                  + "' where a count is wanted. Write what the paper prints."));
    }
    String why =
        "Found '"
            + text
            + "' where a count of a total is wanted. A spreadsheet may have made it of "
            + pair.get().first()
            + "/"
            + pair.get().second()
            + ". Say what the paper prints.";
    return List.of(
        Proposed.asked(
            wanted.count(),
            Integer.toString(pair.get().first()),
            Optional.empty(),
            Doubt.DATE,
            why),
        Proposed.asked(
            wanted.total(),
            Integer.toString(pair.get().second()),
            Optional.empty(),
            Doubt.DATE,
            why));
  }
}
