package gapwise.reference.format;

import gapwise.reference.Link;
import gapwise.reference.Link.Relation;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Relations to other papers that stand in free notes, as "Erratum in: ...". */
final class Notes {
  private static final Map<String, Relation> WORDS =
      Map.ofEntries(
          Map.entry("retraction in", Relation.RETRACTED_IN),
          Map.entry("retracted in", Relation.RETRACTED_IN),
          Map.entry("retracted by", Relation.RETRACTED_IN),
          Map.entry("retraction of", Relation.RETRACTS),
          Map.entry("retracts", Relation.RETRACTS),
          Map.entry("erratum in", Relation.CORRECTED_IN),
          Map.entry("correction in", Relation.CORRECTED_IN),
          Map.entry("corrected in", Relation.CORRECTED_IN),
          Map.entry("corrected by", Relation.CORRECTED_IN),
          Map.entry("corrigendum in", Relation.CORRECTED_IN),
          Map.entry("erratum for", Relation.CORRECTS),
          Map.entry("correction to", Relation.CORRECTS),
          Map.entry("correction of", Relation.CORRECTS),
          Map.entry("corrects", Relation.CORRECTS),
          Map.entry("corrigendum to", Relation.CORRECTS),
          Map.entry("comment in", Relation.COMMENTED_IN),
          Map.entry("comment on", Relation.COMMENTS_ON),
          Map.entry("update in", Relation.UPDATED_IN),
          Map.entry("updated in", Relation.UPDATED_IN),
          Map.entry("update of", Relation.UPDATES),
          Map.entry("expression of concern in", Relation.CONCERN_IN),
          Map.entry("expression of concern for", Relation.CONCERN_FOR),
          Map.entry("republished in", Relation.REPUBLISHED_IN),
          Map.entry("republished from", Relation.REPUBLISHED_FROM));

  private static final Pattern START =
      Pattern.compile(
          "(?:^|[.;\\n]\\s*|\\s)(" + String.join("|", WORDS.keySet()) + ")\\s*:\\s*",
          Pattern.CASE_INSENSITIVE);

  private Notes() {}

  /** Every relation in a note, each with the text up to the next one. */
  static List<Link> links(String note) {
    List<Link> links = new ArrayList<>();
    Matcher found = START.matcher(note);
    Relation open = Relation.UPDATES;
    int from = -1;
    while (found.find()) {
      if (from >= 0) {
        links.add(Link.to(open, note.substring(from, found.start()).strip()));
      }
      open = WORDS.getOrDefault(found.group(1).toLowerCase(Locale.ROOT), Relation.UPDATES);
      from = found.end();
    }
    if (from >= 0) {
      links.add(Link.to(open, note.substring(from).strip()));
    }
    return links;
  }
}
