package org.salvedge.manifest;

import org.salvedge.manifest.words.ClaimReader;
import org.salvedge.manifest.words.Goods;
import org.salvedge.manifest.words.HeadingWords;
import org.salvedge.manifest.words.RowWords;
import org.salvedge.shop.Settings;

/** The readers of single cells, made once for a file. */
record Readers(
        HeaderFinder headers,
        RowWords rowWords,
        Goods goods,
        ClaimReader claims,
        SizeReader sizes,
        SerialReader serials,
        DescriptionReader descriptions,
        Amount plainAmount) {

    static Readers of(Settings settings) {
        RowWords rowWords = new RowWords();
        Goods goods = new Goods();
        ClaimReader claims = new ClaimReader(settings.symptoms());
        SizeReader sizes = new SizeReader(goods, rowWords);
        return new Readers(
                new HeaderFinder(new HeadingWords(settings.columns())),
                rowWords,
                goods,
                claims,
                sizes,
                new SerialReader(rowWords),
                new DescriptionReader(goods, claims, sizes),
                new Amount.Votes().result(rowWords));
    }
}
