package gapwise.analysis.pooling;

import gapwise.effect.StudyData;
import gapwise.synthesis.pooling.CountPooling;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Subgroups;
import java.util.List;

/**
 * A common effect from counts, without the effects of single studies.
 *
 * @param counts the way of pooling them
 */
public record CountsModel(CountPooling counts, PoolingSettings settings) implements Model {
  @Override
  public String word() {
    return "common-effect";
  }

  @Override
  public boolean hasSpread() {
    return false;
  }

  @Override
  public Deletion deletion() {
    return Deletion.COUNTS;
  }

  @Override
  public <D extends StudyData> Pooler pooler(Studies<D> studies) {
    return new OfCounts(studies.pooledData(), counts, settings.level());
  }

  private record OfCounts(List<? extends StudyData> studies, CountPooling counts, double level)
      implements Pooler {
    @Override
    public int size() {
      return studies.size();
    }

    @Override
    public Pooled at(List<Integer> places) {
      return counts.pool(places.stream().map(studies::get).toList(), level);
    }

    @Override
    public Subgroups subgroups(List<String> levels, boolean common) {
      return Subgroups.apart(levels, this::at);
    }
  }
}
