package gapwise.server.page.option;

import gapwise.decision.option.Column;
import gapwise.decision.option.OptionQuestion;
import gapwise.evidence.vocabulary.Method;
import gapwise.search.SearchRequest;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import java.util.Map;

/**
 * Where the series behind a number stand: the same question asked of one outcome and one method.
 */
final class SeriesBehind {
  private SeriesBehind() {}

  static String href(OptionQuestion asked, Column column, Method method) {
    SearchRequest among = asked.among(method);
    Address address =
        new Address(Map.of())
            .with("outcome", column.outcome().code())
            .with("method", method.code())
            .with("q", among.text());
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
    return address.at(PagePaths.POOLED);
  }

  private static String plain(double number) {
    return java.math.BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }
}
