namespace FarmEconomics.ProvingGround.Report;

/// <summary>The page's part on what the farms are, and how figures come about.</summary>
internal static class AdviceNotes
{
    internal const string Text = """

        ## The farms

        Everything is invented from a seed (`benchmarks/FarmEconomics.ProvingGround/World`); the same seed gives the same farm, records and seasons.

        - 18 to 26 crops of 30 kinds in field and tunnel; price, yield, hours and seed cost differ from farm to farm.
        - Yield of a sowing = mean x factor of its week x luck. Luck is lognormal: weather shared by all crops, the crop's season, the sowing; a sowing fails altogether in up to 12% of cases.
        - A market, a stand and shops take q0 of a crop in a week at list price, with a market factor for the season, one for the channel's week and one for the crop's week.
          Beyond q0 the week's quantity x q0 brings R(x) = x^(1 − 1/e) times q0 at list price: constant elasticity e, 0.8 to 3.5, the definition of the price elasticity of demand (OpenStax, Principles of Economics, ch. 5), integrated.
        - Three farms of four fill boxes that members paid in advance: up to the value of a week's payment, first from what the channels don't take at list, then from the rest, then bought in.
        - Own hours a week and hours that can be hired are limited; picking waits for nobody, so what can't be picked in its week is lost. Nobody picks what no one will buy.
        - Farms differ in how tight beds and hours are, in what the market takes, in how many labor rows name a crop (all, 75%, 40%, none) and in how far the grower has come from habit to the best (0 to 60%).
        - Records have ordinary gaps: harvests that name only the crop (15%) or are forgotten (1%), spoiled produce noted half of the time, beds whose last day isn't noted (15%), seed bought for several crops (30%), quantities to a tenth, hours to three minutes.

        ## The policies

        - Rule of thumb: drop the five crops lowest by gross margin per bed-foot, double the five highest.
        - The program's verdicts: drop; another crop instead, as long as the page says; grow, by the step the page names. All at once; what doesn't fit the beds is shrunk.
        - Plain linear program: means of the three seasons; each channel takes the most it took in that week or the two on either side; GLOP (Google OR-Tools).
        - Knowing the truth: a linear program over four seasons drawn from the truth, then the best in play of that plan, 90% and 80% of it and a mix with today's. It doesn't know the luck of the seasons played.

        ## The figures

        - Worst fifth of farms: mean part over the fifth of farms with the least. In a worst-fifth season: mean of each policy's worst fifth of seasons less that of nothing.
        - Right: following the verdict alone gains in the mean of the seasons played, own hours at the owner's wage.
        - Lower 90% bound, one-sided: the lower of Wilson's score bound (each verdict for itself) and the 10th percentile over farms drawn again with replacement (verdicts of a farm are right or wrong together).
        - Single figures of every farm and verdict: `benchmarks/advice/*.csv`.
        - Last digits may differ on another processor or system: logarithms and the solver's choice among equal plans do.

        """;
}
