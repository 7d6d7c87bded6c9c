package gapwise.server.page.option;

import gapwise.decision.option.Column;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.OptionTable;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Method;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.address.QuestionAddress;
import java.util.Map;

/**
 * Where the series behind a number stand: the same question asked of one outcome and one method.
 */
final class SeriesBehind {
  private SeriesBehind() {}

  static String href(Column column, Method method) {
    Question question = column.question(method);
    return at(question, new Address(Map.of()).with("method", method.code()));
  }

  /** The methods of a table by one outcome, those that keep the limb where some do. */
  static String all(Column column, OptionTable table) {
    Address methods = new Address(Map.of());
    if (!table.situation().among().methods().isEmpty()) {
      for (Option option : table.options()) {
        methods = methods.and("method", option.method().code());
      }
    }
    return at(column.questions().get(0), methods);
  }

  private static String at(Question question, Address methods) {
    Address address =
        methods
            .with("outcome", question.outcome().code())
            .with("clock", question.clock().map(Coded::code).orElse(""))
            .with(
                QuestionAddress.UNSTATED_CLOCK,
                question.unstatedClock().map(Coded::code).orElse(""))
            .with(QuestionAddress.COUNTED, question.countedAs().map(Coded::code).orElse(""));
    return of(address, question.among()).at(PagePaths.POOLED);
  }

  /** The claim that the first method gives more than the second, among the same groups. */
  static String claim(OptionQuestion asked, Column column, Method first, Method second) {
    return of(
            new Address(Map.of())
                .with("a", first.code())
                .with("says", "more")
                .with("outcome", column.outcome().code())
                .with("b", second.code()),
            asked.among())
        .at(PagePaths.CLAIM);
  }

  private static Address of(Address start, SearchRequest among) {
    Address address = start.with("q", among.text());
    if (among.defect().isPresent()) {
      double from = among.defect().get().fromCentimetres();
      double to = among.defect().get().toCentimetres();
      address = from > 0 ? address.with("from", plain(from)) : address;
      address = Double.isFinite(to) ? address.with("to", plain(to)) : address;
    }
    for (var bone : among.bones().stream().sorted().toList()) {
      address = address.and("bone", bone.code());
    }
    for (var infected : among.infected().stream().sorted().toList()) {
      address = address.and("infected", infected.code());
    }
    for (var design : among.designs().stream().sorted().toList()) {
      address = address.and("design", design.code());
    }
    for (var risk : among.risks().stream().sorted().toList()) {
      address = address.and("risk", risk.code());
    }
    for (String detail : among.details().stream().map(one -> one.code()).sorted().toList()) {
      address = address.and("detail", detail);
    }
    if (among.years().from().isPresent()) {
      address = address.with("year-from", Integer.toString(among.years().from().getAsInt()));
    }
    if (among.years().to().isPresent()) {
      address = address.with("year-to", Integer.toString(among.years().to().getAsInt()));
    }
    if (among.followUpFrom().isPresent()) {
      address = address.with("follow-up-from", plain(among.followUpFrom().getAsDouble()));
    }
    return address;
  }

  private static String plain(double number) {
    return java.math.BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }
}
