package gapwise.evidence;

import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.evidence.vocabulary.Missing;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One group of patients treated by one method.
 *
 * @param id unique within the study, such as A
 * @param method what was done
 * @param label what the paper calls the group
 * @param baseline who was treated
 * @param details details of the method by the code of the vocabulary of details
 * @param keptApart why it is never pooled; empty for most
 * @param provenance where the numbers of the arm stand in the paper
 * @param missing why template columns are empty, by column
 * @param note anything that the fields cannot say
 */
public record Arm(
    String id,
    MethodUsed method,
    Optional<String> label,
    Baseline baseline,
    SortedMap<String, Detail> details,
    Optional<KeptApart> keptApart,
    Provenance provenance,
    SortedMap<String, Missing> missing,
    Optional<String> note) {

  public Arm {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(method, "method");
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(baseline, "baseline");
    details = Collections.unmodifiableSortedMap(new TreeMap<>(details));
    Objects.requireNonNull(keptApart, "keptApart");
    Objects.requireNonNull(provenance, "provenance");
    missing = Collections.unmodifiableSortedMap(new TreeMap<>(missing));
    Objects.requireNonNull(note, "note");
    Ids.require("arm id", id);
  }

  /** Its details of the method that are listed words of the vocabulary. */
  public List<MethodDetail> listedDetails() {
    return details.entrySet().stream()
        .flatMap(
            one ->
                DetailKind.ofMethods()
                    .find(one.getKey())
                    .flatMap(kind -> MethodDetail.written(kind, one.getValue().words()))
                    .stream())
        .toList();
  }

  /** Starts a value of which only the given parts are known. */
  public static Builder with(String id, MethodUsed method) {
    return new Builder(id, method);
  }

  /** Starts from this value, to change some parts. */
  public Builder but() {
    Builder builder = new Builder(id, method);
    builder.label = label;
    builder.baseline = baseline;
    builder.details = details;
    builder.keptApart = keptApart;
    builder.provenance = provenance;
    builder.missing = missing;
    builder.note = note;
    return builder;
  }

  /** Collects the parts that a paper gives. Not thread-safe. */
  public static final class Builder {
    private final String id;
    private final MethodUsed method;
    private Optional<String> label = Optional.empty();
    private Baseline baseline = Baseline.NOTHING;
    private SortedMap<String, Detail> details = new TreeMap<>();
    private Optional<KeptApart> keptApart = Optional.empty();
    private Provenance provenance = Provenance.NOWHERE;
    private SortedMap<String, Missing> missing = new TreeMap<>();
    private Optional<String> note = Optional.empty();

    private Builder(String id, MethodUsed method) {
      this.id = id;
      this.method = method;
    }

    public Builder label(String value) {
      label = Optional.of(value);
      return this;
    }

    public Builder baseline(Baseline value) {
      baseline = value;
      return this;
    }

    public Builder details(SortedMap<String, Detail> value) {
      details = value;
      return this;
    }

    public Builder keptApart(KeptApart value) {
      keptApart = Optional.of(value);
      return this;
    }

    public Builder provenance(Provenance value) {
      provenance = value;
      return this;
    }

    public Builder missing(SortedMap<String, Missing> value) {
      missing = value;
      return this;
    }

    public Builder note(String value) {
      note = Optional.of(value);
      return this;
    }

    /** The value, checked. */
    public Arm build() {
      return new Arm(id, method, label, baseline, details, keptApart, provenance, missing, note);
    }
  }
}
