package gapwise.curation;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.problem.Problem;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What is remembered of an import: who, when and why stand in the stamp of its document.
 *
 * @param saved number of studies that were written; they hold the change numbers just before that
 *     of this record
 * @param unchanged number of studies that stood in the evidence base with the same content already
 * @param acknowledged doubts that a person was shown and imported the studies with all the same
 * @param acknowledgedKeys the keys of these doubts, by which they are not asked again; none in
 *     records that were stored before keys were kept
 * @param reasons by whom and why a doubt was let stand, by its key; of some only
 */
public record ImportRecord(
    int saved,
    int unchanged,
    List<Problem> acknowledged,
    List<String> acknowledgedKeys,
    Map<String, String> reasons) {
  private static final JsonMapper MAPPER =
      JsonMapper.builder().disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES).build();

  public ImportRecord {
    acknowledged = List.copyOf(acknowledged);
    acknowledgedKeys = acknowledgedKeys == null ? List.of() : List.copyOf(acknowledgedKeys);
    reasons = reasons == null ? Map.of() : Collections.unmodifiableMap(new TreeMap<>(reasons));
    if (saved < 0 || unchanged < 0) {
      throw new IllegalArgumentException(
          "counts must not be negative, were " + saved + " and " + unchanged);
    }
  }

  /** Without reasons. */
  public ImportRecord(
      int saved, int unchanged, List<Problem> acknowledged, List<String> acknowledgedKeys) {
    this(saved, unchanged, acknowledged, acknowledgedKeys, Map.of());
  }

  String toJson() {
    try {
      return MAPPER.writeValueAsString(this);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("an import record cannot be written", e);
    }
  }

  /** Whether a text is such a record. */
  public static boolean isOne(String json) {
    try {
      return ofJson(json).saved >= 0;
    } catch (IllegalStateException none) {
      return false;
    }
  }

  static ImportRecord ofJson(String json) {
    try {
      return MAPPER.readValue(json, ImportRecord.class);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("not an import record: " + e.getOriginalMessage(), e);
    }
  }
}
