package gapwise.selection;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Definition;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.DefinitionKind;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/** Which studies a question takes, by how they define its outcome. */
public sealed interface DefinitionAsked extends Coded {
  /** Whether a study that defines the outcome so is taken. */
  boolean fits(Definition definition);

  /** Within a title: "defined by frame off". */
  String phrase();

  /**
   * Those whose definition asks for something, be it for other things too.
   *
   * @param kind what
   */
  record OfKind(DefinitionKind kind) implements DefinitionAsked {
    public OfKind {
      Objects.requireNonNull(kind, "kind");
    }

    @Override
    public String code() {
      return kind.code();
    }

    @Override
    public String label() {
      return kind.label();
    }

    @Override
    public String phrase() {
      return say("selection.defined-by", Map.of("definition", kind.label()));
    }

    @Override
    public boolean fits(Definition definition) {
      return definition.kinds().contains(kind);
    }
  }

  /** Those of which no kind is known. */
  enum Unsorted implements DefinitionAsked {
    /** The paper defines it in words that the vocabulary does not know. */
    OTHER_WORDS("selection.definition-other-words", "selection.defined-otherwise"),
    /** The paper does not say. */
    NOT_SAID("selection.definition-not-said", "selection.defined-nowhere");

    private final String name;
    private final String phrase;

    Unsorted(String name, String phrase) {
      this.name = name;
      this.phrase = phrase;
    }

    @Override
    public String code() {
      return Coded.codeOf(this);
    }

    @Override
    public String label() {
      return say(name);
    }

    @Override
    public String phrase() {
      return say(phrase);
    }

    @Override
    public boolean fits(Definition definition) {
      return definition.kinds().isEmpty() && definition.isStated() == (this == OTHER_WORDS);
    }
  }

  /** All that can be asked, kinds in the order of the vocabulary, then the unsorted. */
  static List<DefinitionAsked> all() {
    return Stream.concat(
            DefinitionKind.vocabulary().all().stream().map(OfKind::new),
            Stream.<DefinitionAsked>of(Unsorted.values()))
        .toList();
  }

  /** What a code asks for; empty where it is no code. */
  static Optional<DefinitionAsked> find(String code) {
    return code.isEmpty()
        ? Optional.empty()
        : all().stream().filter(one -> one.code().equals(code)).findFirst();
  }

  /** All codes. */
  static List<String> codes() {
    return all().stream().map(Coded::code).toList();
  }
}
