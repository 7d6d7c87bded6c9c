package gapwise.server.page.extraction;

import gapwise.answer.StudyAddress;
import gapwise.screening.Reader;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import java.util.List;
import java.util.Map;

/** Where the pages of one paper are. */
public final class ExtractionAddress {
  /** The route of a paper. */
  static final String PAPER = PagePaths.EXTRACTION + "/{study}";

  private ExtractionAddress() {}

  /** The page of a paper. */
  public static String of(String study) {
    return StudyAddress.of(study).replaceFirst(PagePaths.STUDIES, PagePaths.EXTRACTION);
  }

  /** A page below that of the paper, for a person. */
  static String of(String study, String page, Reader who) {
    return new Address(Map.of(Person.WHO, List.of(who.name()))).at(of(study) + page);
  }
}
