namespace FarmEconomics.ProvingGround.Play;

/// <summary>Told everything that happens in a season that is recorded.</summary>
internal interface IDiary
{
    void Picked(int crop, int sown, int week, double units);

    /// <summary>Sold through an outlet, at the price of all units of the week.</summary>
    void Sold(int crop, int outlet, int week, (double Units, double Price) sale);

    void Boxed(int crop, int week, double units);

    void Spoiled(int crop, int week, double units);

    /// <summary>Hours of a stage (grow, harvest, pack).</summary>
    void Worked(int crop, string stage, int week, double hours);

    void WeekDone(int week, double hiredHours, double boughtIn);
}
