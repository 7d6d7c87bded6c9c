package gapwise.figure.timeline;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.value.Check;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The course of one case beside pooled times as a value: one track for each moment from which times
 * are counted, since times from different moments must not be read against each other. Draw it with
 * {@link TimelineDrawing}, list it with {@link TimelineTable}.
 *
 * @param title what is shown
 * @param sentences what it says in words
 * @param tracks one or more
 * @param cautions what must be known beside it
 * @param provenance where the pooled times come from
 */
public record Timeline(
    String title,
    List<String> sentences,
    List<Track> tracks,
    List<String> cautions,
    FigureProvenance provenance)
    implements Figure {

  /** How much weight the leg bears in a phase; drawn darker the more it bears. */
  public enum Load {
    /** A frame is on; drawn with pins. */
    FRAME,
    NONE,
    PARTIAL,
    IN_SUPPORT,
    FREE,
    /** Waiting, between stages. */
    WAITING
  }

  /**
   * A phase of the case.
   *
   * @param number its place in the course, 1 or more
   * @param fromMonths from the origin of the track; below 0 for what came before it
   */
  public record Stretch(int number, String phase, Load load, double fromMonths, double toMonths) {
    public Stretch {
      Check.words(phase, "phase");
      Objects.requireNonNull(load, "load");
      Check.finite(fromMonths, "fromMonths");
      if (!(Check.finite(toMonths, "toMonths") > fromMonths)) {
        throw new IllegalArgumentException(phase + " ends before it starts");
      }
    }

    /** Its number and name. */
    String title() {
      return say("figure.phase-title", Map.of("number", number, "phase", phase));
    }
  }

  /** A milestone of the case, in months from the origin of the track. */
  public record Reached(String milestone, double months) {
    public Reached {
      Check.words(milestone, "milestone");
      if (!(Check.finite(months, "months") > 0)) {
        throw new IllegalArgumentException(milestone + " must come after the origin");
      }
    }
  }

  /**
   * The pooled time of one method to one milestone.
   *
   * @param series how many series
   * @param prediction where a new series may lie; empty where not told
   */
  public record Pooled(
      String milestone,
      MethodMark method,
      int series,
      Estimate average,
      Optional<Limits> prediction) {
    public Pooled {
      Check.words(milestone, "milestone");
      Objects.requireNonNull(method, "method");
      Objects.requireNonNull(average, "average");
      Objects.requireNonNull(prediction, "prediction");
    }
  }

  /**
   * What is counted from one moment.
   *
   * @param origin the moment, such as "frame put on"
   * @param course phases of the case; empty where they are not known from this moment
   * @param reached milestones of the case, first first
   * @param pooled pooled times to the same milestones from the same moment
   */
  public record Track(
      String origin, List<Stretch> course, List<Reached> reached, List<Pooled> pooled) {
    public Track {
      Check.words(origin, "origin");
      course = List.copyOf(course);
      reached = List.copyOf(reached);
      pooled = List.copyOf(pooled);
    }

    Optional<Reached> of(String milestone) {
      return reached.stream().filter(one -> one.milestone().equals(milestone)).findFirst();
    }
  }

  public Timeline {
    Check.words(title, "title");
    sentences = List.copyOf(sentences);
    tracks = List.copyOf(tracks);
    if (tracks.isEmpty()) {
      throw new IllegalArgumentException("a timeline needs a track");
    }
    cautions = List.copyOf(cautions);
    Objects.requireNonNull(provenance, "provenance");
  }

  /** The longest time that all tracks have room for; wider limits leave with an arrow. */
  double longestMonths() {
    double middles =
        tracks.stream()
            .flatMap(
                track ->
                    Stream.of(
                            track.course().stream().map(Stretch::toMonths),
                            track.reached().stream().map(Reached::months),
                            track.pooled().stream().map(one -> one.average().value()))
                        .flatMap(each -> each))
            .mapToDouble(Double::doubleValue)
            .max()
            .orElse(1);
    double limits =
        tracks.stream()
            .flatMap(track -> track.pooled().stream())
            .flatMap(
                one ->
                    Stream.concat(
                        Stream.of(one.average().upper()),
                        one.prediction().stream().map(Limits::upper)))
            .mapToDouble(Double::doubleValue)
            .max()
            .orElse(0);
    return Math.max(middles * 1.05, Math.min(limits, middles * 1.5));
  }

  /** The figure in a few sentences, for those who cannot see it. */
  @Override
  public String description() {
    List<String> words = new ArrayList<>();
    if (provenance.demonstration()) {
      words.add(FigureProvenance.INVENTED);
    }
    words.addAll(sentences);
    for (Track track : tracks) {
      words.add(say("figure.months-told-from", Map.of("origin", track.origin())));
      track.course().forEach(stretch -> words.add(TimelineTable.told(stretch)));
      track.reached().forEach(one -> words.add(TimelineTable.told(one)));
      track.pooled().forEach(one -> words.add(TimelineTable.told(one)));
    }
    words.addAll(cautions);
    return String.join(" ", words);
  }

  @Override
  public List<Picture> draw(Setting setting) {
    return TimelineDrawing.draw(this, setting);
  }

  @Override
  public int sheets(Medium medium) {
    return TimelineDrawing.sheets(this, Setting.alone(medium));
  }

  @Override
  public String csv() {
    return new TimelineTable(this).csv();
  }
}
