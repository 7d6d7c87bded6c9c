package gapwise.selection;

import gapwise.evidence.Definition;
import gapwise.evidence.vocabulary.Coded;
import java.util.stream.Collectors;

/** What a definition asks for, in the words of the vocabulary. */
final class DefinitionWords {
  private DefinitionWords() {}

  /** Such as "bridging of three of four cortices; walking without pain". */
  static String kinds(Definition definition) {
    return definition.kinds().stream().map(Coded::label).collect(Collectors.joining("; "));
  }
}
