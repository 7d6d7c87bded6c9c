package gapwise.reference.kept;

import gapwise.reference.Author;
import gapwise.reference.Identifiers;
import gapwise.reference.Link;
import gapwise.reference.Published;
import gapwise.reference.Reference;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/**
 * Hashes of what a reference says and of what a decision stood on. They are written out value by
 * value and not taken from the values' own text, so that a later version of the program asks nobody
 * again and finds the same ids.
 */
final class Fingerprint {
  /** So many bytes tell any two records apart; more only make decisions longer. */
  private static final int BYTES = 12;

  /** Bytes of an id: among a million references two of one id are less likely than 1 in 10^7. */
  private static final int BYTES_OF_ID = 8;

  private Fingerprint() {}

  /** What a reference says, its own name in its file left out. */
  static String of(Reference reference) {
    List<String> values = new ArrayList<>();
    values.add(reference.kind().map(Enum::name).orElse("") + "|" + reference.kindsPrinted());
    values.add(reference.titles().main() + "|" + reference.titles().original().orElse(""));
    values.addAll(reference.titles().others());
    reference.authors().stream().map(Author::line).forEach(values::add);
    Published place = reference.published();
    values.add(place.journal().orElse("") + "|" + place.shortJournal().orElse(""));
    values.add(
        place.date().orElse("") + "|" + (place.year().isPresent() ? place.year().getAsInt() : ""));
    values.add(place.volume().orElse("") + "|" + place.issue().orElse(""));
    values.add(place.pages().orElse("") + "|" + place.issn().orElse(""));
    values.add(place.publisher().orElse(""));
    Identifiers numbers = reference.identifiers();
    values.add(numbers.doi().orElse("") + "|" + numbers.pmid().orElse(""));
    values.add(numbers.pmcid().orElse("") + "|" + numbers.trial().orElse(""));
    values.add(reference.summary().orElse(""));
    for (Link link : reference.links()) {
      values.add(link.relation() + "|" + link.text());
    }
    return hash(String.join("\n", values), BYTES);
  }

  /** What a decision about two stands on. */
  static String ofPair(String oneId, String one, String otherId, String other) {
    return hash(oneId.compareTo(otherId) <= 0 ? one + other : other + one, BYTES);
  }

  static String id(String identity) {
    return KeptReference.PREFIX + hash(identity, BYTES_OF_ID);
  }

  /** A hash of a text. */
  static String hash(String text) {
    return hash(text, BYTES);
  }

  private static String hash(String text, int bytes) {
    return HexFormat.of()
        .formatHex(digest().digest(text.getBytes(StandardCharsets.UTF_8)), 0, bytes);
  }

  static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
