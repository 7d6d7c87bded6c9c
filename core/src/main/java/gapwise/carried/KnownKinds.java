package gapwise.carried;

import gapwise.curation.EvidenceBase;
import gapwise.curation.ImportRecord;
import gapwise.decision.certainty.Judgement;
import gapwise.evidence.EvidenceJson;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.BiPredicate;

/**
 * Every kind of documents that a history may hold, each with the room that reads it. A new kind of
 * documents has its line here, or here or in {@link CarriedKind} where it is carried beside the
 * studies too.
 */
public final class KnownKinds {
  /** Whether a content belongs under a key; throws where it is no content of the kind. */
  private static final Map<String, BiPredicate<String, String>> READING =
      Map.of(
          EvidenceBase.STUDY,
          (key, json) -> EvidenceJson.read(json).id().equals(key),
          EvidenceBase.IMPORT,
          (key, json) -> ImportRecord.isOne(json),
          EvidenceBase.JUDGEMENT,
          (key, json) -> !Judgement.ofJson(json).reason().isEmpty());

  private KnownKinds() {}

  /** Whether there is a kind of this word. */
  public static boolean has(String kind) {
    return READING.containsKey(kind) || CarriedKind.find(kind).isPresent();
  }

  /** Their words, for people. */
  public static String words() {
    TreeSet<String> words = new TreeSet<>(READING.keySet());
    for (CarriedKind kind : CarriedKind.values()) {
      words.add(kind.word());
    }
    return String.join(", ", words);
  }

  /** Whether a content can be read as one of a kind, and belongs under this key. */
  public static boolean reads(String kind, String key, String json) {
    try {
      Optional<CarriedKind> carried = CarriedKind.find(kind);
      if (carried.isPresent()) {
        return carried.get().read(json).key().equals(key);
      }
      BiPredicate<String, String> reading = READING.get(kind);
      return reading != null && reading.test(key, json);
    } catch (RuntimeException unreadable) {
      // Whatever a room says of a text that is none of its own: all that matters is that it is not.
      return false;
    }
  }
}
