package gapwise.reference.pair;

import gapwise.reference.Author;
import gapwise.reference.Link;
import gapwise.reference.Reference;
import gapwise.reference.likeness.JournalName;
import gapwise.reference.likeness.Letters;
import gapwise.reference.likeness.PageSpan;
import gapwise.reference.likeness.PersonName;
import gapwise.reference.likeness.TitleWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What of a reference is compared, made ready once.
 *
 * @param filed the reference
 * @param nature what it is
 * @param saysRetracted whether its title or kind says that its own paper was retracted
 * @param titles its titles, the main one first, without the words of a notice
 * @param people persons among its authors
 * @param groups groups among its authors, in plain letters
 * @param journals names of its journal
 * @param pages its pages
 */
record Profile(
    FiledReference filed,
    Nature nature,
    boolean saysRetracted,
    List<TitleWords> titles,
    List<PersonName> people,
    List<String> groups,
    List<JournalName> journals,
    Optional<PageSpan> pages) {

  static Profile of(FiledReference filed) {
    Reference reference = filed.reference();
    NoticeTitle title = NoticeTitle.of(reference.titles().main());
    List<TitleWords> titles = new ArrayList<>();
    titles.add(TitleWords.of(title.core()));
    reference.titles().original().map(TitleWords::of).ifPresent(titles::add);
    reference.titles().others().forEach(other -> titles.add(TitleWords.of(other)));
    List<PersonName> people = new ArrayList<>();
    List<String> groups = new ArrayList<>();
    for (Author author : reference.authors()) {
      if (author instanceof Author.Person person) {
        people.add(new PersonName(person.fullFamily(), person.given()));
      } else {
        groups.add(Letters.joined(author.line()));
      }
    }
    List<JournalName> journals = new ArrayList<>();
    reference.published().journal().map(JournalName::of).ifPresent(journals::add);
    reference
        .published()
        .shortJournal()
        .map(JournalName::of)
        .filter(name -> !journals.contains(name))
        .ifPresent(journals::add);
    return new Profile(
        filed,
        Nature.of(reference, title),
        title.retracted() || saysRetracted(reference),
        List.copyOf(titles),
        List.copyOf(people),
        List.copyOf(groups),
        List.copyOf(journals),
        reference.published().pages().flatMap(PageSpan::of));
  }

  private static boolean saysRetracted(Reference reference) {
    return reference.kindsPrinted().stream()
        .anyMatch(
            kind ->
                kind.equalsIgnoreCase("retracted publication")
                    || kind.equalsIgnoreCase("retracted"));
  }

  Reference reference() {
    return filed.reference();
  }

  RecordKey key() {
    return filed.key();
  }

  TitleWords title() {
    return titles.get(0);
  }

  Optional<String> doi() {
    return reference().identifiers().doi();
  }

  Optional<String> pmid() {
    return reference().identifiers().pmid();
  }

  Optional<String> trial() {
    return reference().identifiers().trial();
  }

  OptionalInt year() {
    return reference().published().year();
  }

  /** Volume in plain letters. */
  Optional<String> volume() {
    return reference().published().volume().map(Letters::joined).filter(text -> !text.isEmpty());
  }

  List<Link> links() {
    return reference().links();
  }

  /** Whether a title has enough words that two papers seldom share it by chance. */
  boolean hasTellingTitle() {
    int words = title().words().size();
    int letters = title().letters().length();
    return (words >= TELLING_WORDS && letters >= TELLING_LETTERS)
        || (words >= TELLING_LONG_WORDS && letters >= TELLING_LETTERS_OF_LONG_WORDS)
        || (letters >= TELLING_SIGNS && Letters.isInAnotherScript(title().letters()));
  }

  /** "From the editors" and "Bone gaps" tell nothing. Common practice, no source. */
  private static final int TELLING_WORDS = 5;

  private static final int TELLING_LETTERS = 22;

  /** Languages that join words tell as much with fewer of them. */
  private static final int TELLING_LONG_WORDS = 3;

  private static final int TELLING_LETTERS_OF_LONG_WORDS = 30;

  /** Signs of scripts of which each stands for a word or syllable. */
  private static final int TELLING_SIGNS = 10;
}
