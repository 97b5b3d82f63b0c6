package org.salvedge.worth.study;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Settings;
import org.salvedge.worth.Candidate;
import org.salvedge.worth.Question;
import org.salvedge.worth.ShopModel;

/** The estimate on trial, asked as the commands ask it. */
final class ShopModelForecaster implements Forecaster {
    private static final int DRAWS = 4_000;

    @Override
    public String name() {
        return "salvedge";
    }

    @Override
    public Fitted fit(ShopSnapshot shop) {
        Settings d = Settings.defaults(shop.history().currency(), ZoneOffset.UTC);
        Settings settings = new Settings(
                d.currency(),
                d.zone(),
                shop.labourRate(),
                d.basis(),
                d.confidence(),
                d.targetReturn(),
                d.draws(),
                d.seed(),
                d.pageSize(),
                d.families(),
                d.columns(),
                d.symptoms(),
                d.codes());
        ShopModel model = ShopModel.fit(shop.history(), LocalDate.ofEpochDay(shop.asOf()), settings);
        return lot -> {
            Question question = new Question(
                    candidates(lot), lot.supplier(), LocalDate.ofEpochDay(lot.on()), DRAWS, settings.seed());
            return Forecast.ofDraws(model.predict(question).recovery().sortedDraws());
        };
    }

    private static List<Candidate> candidates(Offer lot) {
        List<Candidate> sets = new ArrayList<>();
        for (OfferedSet s : lot.sets()) {
            sets.add(new Candidate(
                    "lot",
                    sets.size() + 2,
                    s.maker(),
                    s.model(),
                    s.inches(),
                    new Claim(s.claimed()),
                    s.asking() < 0 ? null : BigDecimal.valueOf(s.asking(), 2)));
        }
        return sets;
    }
}
