import { html } from '../html.ts';
import { cited, functionLink } from '../words.ts';
import { type Section, step, taken, worked } from './figures.ts';

export const moneySections: readonly Section[] = [
  {
    id: 'money',
    title: 'The money of a year',
    paragraphs: [
      html`The method is the partial budget: extra income and costs saved, less extra costs and income lost (${cited('iowa-c1-50')}). Only what changes is counted; the rest of the farm is not.`,
      html`Saved: the bought bedding with its haulage (${functionLink('COST.BOUGHT')}) and the labour that goes with it now. Extra: power, heat, labour and repairs of the kit (${functionLink('COST.HOME')}), and bought bedding where the kit falls short. The first less the second is the saving. It is before tax and before any cost of owning the kit.`,
      html`Owning the kit is charged once. A yearly budget, and the full cost of a tonne, take it as one even charge: ${step('COST.OWNERSHIP', 'residual_today', 'recovery_factor', 'ownership_year')}, which holds depreciation and interest together. Present value takes the outlay when it is spent and no depreciation at all. No answer here takes both; do not subtract the ownership cost from a saving that you then discount.`,
      html`Labour is counted at the rate typed in, whoever does it. Where hours saved are not paid out, or not put to use, the saving in cash is smaller: set the rate to what would truly change hands.`,
      html`Heat has a price even where it is left over: what it could earn or save elsewhere. The budget does not start until a price is typed, and zero must be typed as zero.`,
      html`Repairs are a share of the whole kit cost before any grant, since a grant mends nothing. The budget begins with ${taken('repairs_share')}.`,
      html`Extra cases of mastitis are not in the saving, for the reason given in <a href="#score">the section on the score</a>. They stand beside it as the number that would eat it.`,
      html`<b>Against.</b> Left out, since no figure is held that would do for every farm: nitrogen lost to the air when fibre is dried (about half of it in ${cited('awiszus-2018')}, from digestate), store and spreading of the thinner liquid, milk or bonus lost if a buyer refuses fibre, insurance, and the cows’ comfort. Each can turn the answer; add what you know to running costs.`,
    ],
  },
  {
    id: 'invest',
    title: 'Present value, payback, loan and tax',
    paragraphs: [
      html`The outlay is at the start, net of any grant; savings come at the end of each year and grow from the second. Net present value: ${step('INVEST.NPV', 'annuity_factor', 'savings_today', 'residual_today', 'npv')}. A spreadsheet’s own NPV discounts the first value it is given by one year, so give it the savings alone and subtract the outlay outside it; the workbook’s checks do so and agree.`,
      html`The internal rate is found by halving a bracket, negative rates too, and only for an outlay followed by savings, where there is one root at most: ${step('INVEST.IRR', 'irr')}. It was checked against ${cited('numpy-financial')}.`,
      html`Payback runs in a straight line within its last year and is not given beyond the kit’s life: ${step('INVEST.PAYBACK', 'years')}. Discounted payback is the same with interest. Both say nothing of what comes after; lenders ask for them, present value decides.`,
      html`Break-evens turn the question round, all else held: the bought price at which present value is 0, ${step('INVEST.BREAKEVENPRICE', 'saving_needed', 'price_per_t')}, and in the budget the heat price, the kit cost and the cases of mastitis.`,
      html`Keep rate and growth of one kind: with a rate as a bank quotes it, let the saving grow with prices; with growth 0 the budget is in today’s money and wants the real rate, ${step('INVEST.REALRATE', 'real_rate')}. The functions cannot tell which you mean. A loan’s rate and tax allowances are always as quoted. Defaults: rate ${taken('discount_rate')}, growth ${taken('saving_growth')}.`,
      html`A loan has level payments at the end of each period: ${step('INVEST.REPAYMENT', 'payments', 'rate_per_payment', 'payment')}. At work: ${worked('INVEST.REPAYMENT', [30_000, 3, 0.06, 1])}, as ${cited('loan-course')} has it. Cover is the first year’s saving before tax over the year’s payments; 1.25 is a published guideline and the bank’s own counts.`,
      html`Tax, in ${functionLink('INVEST.CASHFLOW')}, is plain on purpose: rate × (saving − allowance), paid in the same year, with relief in that year where it is negative. Allowances run as a pool or straight and add up to the outlay less the end value if the balance is taken at the end. Net of year 0 is the whole outlay, with or without a loan, so that finance does not change the worth of the kit. Beside it the loan comes in and is served, with the relief of its interest where you ask for it; the sum is own money: while negative it is still put in. What is still owed when the kit is worn out comes off the last year.`,
      html`Rates and allowances are inputs and start at nothing. As last read: ${cited('uk-allowances')}; ${cited('ireland-allowances')}. They change; check the current ones, and with whom the farm is taxed, with an accountant.`,
      html`<b>Against.</b> An accountant will miss: losses carried forward where there is no profit to set them against, bands and other taxes on income, payment dates, value added tax, the tax on a grant, and hire purchase. None is in it. Where one of them decides, take the net column before tax and work on from there.`,
      html`How sure? ${functionLink('INVEST.SENSITIVITY')} moves one uncertain figure at a time from low to high. ${functionLink('INVEST.PROBABILITY')} draws many whole plans, ${taken('draws')} unless told otherwise, each figure from a triangle of low, likely and high, spread evenly over it (${cited('mckay-1979')}). The same seed gives the same answer. The discount rate stays where it is: it is a preference, no risk.`,
      html`<b>Against.</b> The draws are independent, though a dear sawdust year is often a dear power year; and a triangle knows no surprise beyond its corners. A chance so found says how the plan stands on your own low and high, not how the world will go.`,
    ],
  },
];
