package gapwise.wording;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.EventCount;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Missing;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** One recorded thing with its name, both in words. */
public record Fact(String name, String words) {

  /** Collects what is known, in order. Not thread-safe. */
  static final class Collector {
    private final List<Fact> facts = new ArrayList<>();

    Collector text(String name, Optional<String> words) {
      words.ifPresent(text -> facts.add(new Fact(name, text)));
      return this;
    }

    Collector word(String name, Optional<? extends Coded> word) {
      return text(name, word.map(Coded::label));
    }

    Collector number(String name, OptionalInt number) {
      if (number.isPresent()) {
        facts.add(new Fact(name, String.valueOf(number.getAsInt())));
      }
      return this;
    }

    Collector summary(String name, Optional<QuantitySummary> summary) {
      return text(name, summary.map(QuantityWords::asReported));
    }

    Collector count(String name, Optional<EventCount> count) {
      return text(name, count.map(c -> Values.asReported(new ReportedValue.Events(c)).counted()));
    }

    /** Template columns that are empty for a reason, gathered by reason. */
    Collector missing(Map<String, Missing> columns) {
      for (Missing reason : Missing.values()) {
        List<String> names =
            columns.entrySet().stream()
                .filter(e -> e.getValue() == reason)
                .map(e -> e.getKey().replace('_', ' '))
                .toList();
        if (!names.isEmpty()) {
          facts.add(new Fact(name(reason), String.join(", ", names)));
        }
      }
      return this;
    }

    private static String name(Missing reason) {
      return switch (reason) {
        case NOT_REPORTED -> say("wording.fact-not-reported");
        case NOT_APPLICABLE -> say("wording.fact-not-applicable");
        case UNCLEAR -> say("wording.fact-unclear");
      };
    }

    List<Fact> list() {
      return List.copyOf(facts);
    }
  }
}
