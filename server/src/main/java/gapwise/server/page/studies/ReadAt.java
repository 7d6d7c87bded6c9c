package gapwise.server.page.studies;

import gapwise.evidence.Provenance;
import gapwise.evidence.Reading;
import gapwise.server.address.PageBoxes;
import java.util.ArrayList;
import java.util.List;

/**
 * Where numbers stand on a page of the paper, to be opened with its words marked.
 *
 * @param href the page
 * @param number of the page
 * @param words as printed
 */
public record ReadAt(String href, int number, String words) {
  /** The places of a part of a record, each once however many numbers were read there. */
  static List<ReadAt> of(Provenance provenance) {
    List<ReadAt> places = new ArrayList<>();
    for (Reading reading : provenance.readings()) {
      ReadAt place = new ReadAt(PageBoxes.at(reading), reading.page(), reading.words());
      if (!places.contains(place)) {
        places.add(place);
      }
    }
    return List.copyOf(places);
  }
}
