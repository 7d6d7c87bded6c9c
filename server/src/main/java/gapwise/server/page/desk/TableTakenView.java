package gapwise.server.page.desk;

import gapwise.server.page.Site;
import java.util.List;

/**
 * What of a table was not taken.
 *
 * @param site the frame of the page
 * @param href the draft
 * @param accepted how many values were to be taken
 * @param notTaken a sentence for each that was not
 */
public record TableTakenView(Site site, String href, int accepted, List<String> notTaken) {
  public TableTakenView {
    notTaken = List.copyOf(notTaken);
  }
}
